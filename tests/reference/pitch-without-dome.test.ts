import { describe, expect, it } from "vitest";
import { instrumentFrom, solved } from "../support/solved.ts";

/*
 * Neck pitch on a flat top: tan a = h/L with h = (bridge + gap) − (fingerboard + fret) and L from the body
 * join to the saddle. Formula and the dimensions seen on a builders' tip page (buildyourguitar.com/resources/tips/aangle.htm,
 * citing Cumpiano and Natelson, Guitarmaking: Tradition and Technology); the angles are exact from it.
 * 25.4 in scale, 0.1 in compensation, 3/8 in bridge, 0.040 in frets, 14 frets to the body.
 */
const inch = 25.4;

const published = [
  { fingerboard: "1/4", thickness: 1 / 4, gapName: "1/64", gap: 1 / 64, angle: 0.505 },
  { fingerboard: "1/4", thickness: 1 / 4, gapName: "1/16", gap: 1 / 16, angle: 0.74 },
  { fingerboard: "3/16", thickness: 3 / 16, gapName: "1/64", gap: 1 / 64, angle: 0.819 },
  { fingerboard: "3/16", thickness: 3 / 16, gapName: "1/16", gap: 1 / 16, angle: 1.054 },
];

function pitchOf(thickness: number, gap: number, flatLength: number): number {
  return solved(
    instrumentFrom({
      dome: { dishRadius: null, braceRadius: null, flatLength, tailExtra: 0 },
      neck: {
        scale: 25.4 * inch,
        joinFret: 14,
        fingerboardThickness: thickness * inch,
        fretHeight: 0.04 * inch,
        neckTilt: 0,
      },
      bridge: { thickness: (3 / 8) * inch, compensation: 0.1 * inch },
      target: { kind: "bridgeClearance", value: gap * inch },
    }),
  ).pitch;
}

describe.each(published)(
  "fingerboard $fingerboard in, fret plane $gapName in over the bridge",
  ({ thickness, gap, angle }) => {
    it(`has a pitch of ${angle} degrees with no flat at all`, () => {
      expect(Math.abs(pitchOf(thickness, gap, 0) - angle)).toBeLessThan(0.0005);
    });

    it("comes to it in proportion as the flat shrinks", () => {
      // A flat of f mm leaves L − f to climb in: about angle·f/L too steep.
      const toSaddle = 11.414 * inch;
      const none = pitchOf(thickness, gap, 0);
      for (const flat of [8, 4, 2, 1]) {
        const excess = pitchOf(thickness, gap, flat) - none;
        expect(excess / ((none * flat) / (toSaddle - flat))).toBeCloseTo(1, 3);
      }
    });
  },
);
