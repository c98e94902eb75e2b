import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { sayPhrase } from "../../../src/instrument/phrase.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { expectedOf } from "../../../src/profile/bench/expected.ts";
import {
  evenLowestX,
  tailExtraExplained,
  tailExtraHeldLevel,
  tailExtraMeasured,
  tailExtraOffer,
} from "../../../src/profile/bench/tail-extra.ts";
import { recordOf } from "../../support/bench-record.ts";
import { solved } from "../../support/solved.ts";

const rim = { curvature: 1 / 8534.4, breakX: 390, breakHalfWidth: 122, breakMiddle: 0 };

/** Straight up from (x, y) to the dish, which rests on z = 0 at (lowestX, 0): by halving, no formula for its height. */
function dishOver(radius: number, lowestX: number, x: number, y: number): number {
  let [low, high] = [0, radius];
  for (let i = 0; i < 80; i++) {
    const z = (low + high) / 2;
    const under = Math.hypot(x - lowestX, y, z - radius) > radius;
    [low, high] = under ? [z, high] : [low, z];
  }
  return (low + high) / 2;
}

describe("a rim held level in a dish", () => {
  it("loses at the tail end and at the break what the dish has risen to there", () => {
    for (const radius of [3000, 8534.4, 15000])
      for (const lowestX of [150, 222, 245, 300]) {
        const { breakX, breakHalfWidth } = rim;
        const inSpace =
          dishOver(radius, lowestX, 0, 0) - dishOver(radius, lowestX, breakX, breakHalfWidth);
        const more = tailExtraHeldLevel({ ...rim, curvature: 1 / radius }, lowestX);
        expect(more).toBeCloseTo(inSpace, 8);
        // Halves that differ: both ends of the break are as far from the break's middle, the tail end is not on it.
        const aside =
          dishOver(radius, lowestX, 0, -9) - dishOver(radius, lowestX, breakX, breakHalfWidth);
        const uneven = { ...rim, curvature: 1 / radius, breakMiddle: 9 };
        expect(tailExtraHeldLevel(uneven, lowestX)).toBeCloseTo(aside, 8);
      }
  });

  it("loses as much at both only where the dish's lowest place says so", () => {
    const { breakX, breakHalfWidth } = solved(defaultInstrument);
    const even = evenLowestX({ breakX, breakHalfWidth, breakMiddle: 0 });
    expect(even).toBeCloseTo(222, 0);
    expect(
      tailExtraHeldLevel({ ...rim, breakX, breakHalfWidth, breakMiddle: 0 }, even),
    ).toBeCloseTo(0, 12);
    expect(
      tailExtraHeldLevel({ ...rim, breakX, breakHalfWidth, breakMiddle: 0 }, even + 10),
    ).toBeGreaterThan(0.1);
  });

  it("is the finished rim of a plan that counts on it: the dome's axis, square to the datum, stands at the dish's lowest place", () => {
    for (const preset of presets) {
      const lowestX = preset.body.length / 2;
      const plain = solved(preset);
      const curvature = 1 / (preset.dome.dishRadius ?? Number.POSITIVE_INFINITY);
      const tailExtra = tailExtraHeldLevel({ ...plain, curvature }, lowestX);
      if (tailExtra === null) throw new Error("no dish");
      const plan = solved({ ...preset, dome: { ...preset.dome, tailExtra } });
      const { axis, lean, rise } = plan.dome;
      const [centreX, centreZ] = [axis - lean / curvature, -rise / curvature];
      // Along the datum from the tail end, where it stands `tailDrop` under the flat.
      const pitch = (plan.pitch / 180) * Math.PI;
      const foot = centreX * Math.cos(pitch) + (centreZ + plan.tailDrop) * Math.sin(pitch);
      // The outline is in plan on the flat, the dish's place along the datum.
      expect(Math.abs(foot - lowestX), preset.name).toBeLessThan(0.5);
    }
  });

  it("over the middle of its dish loses more at the tail on every preset, and the step says how much", () => {
    for (const preset of presets) {
      const plan = solved(preset);
      const curvature = 1 / (preset.dome.dishRadius ?? Number.POSITIVE_INFINITY);
      const more = tailExtraHeldLevel({ ...plan, curvature }, preset.body.length / 2) ?? 0;
      expect(more, preset.name).toBeGreaterThan(0.3);
      expect(more, preset.name).toBeLessThan(2);
      const said = tailExtraExplained(preset, plan).map((phrase) => sayPhrase(phrase, "mm"));
      expect(said.join(" ")).toContain(`loses ${more.toFixed(more < 1 ? 2 : 1)} mm more`);
    }
  });

  it("is not held by a dish that ends short of it", () => {
    expect(tailExtraHeldLevel({ ...rim, curvature: 1 / 200 }, 245)).toBeNull();
  });
});

describe("the extra off the tail, from side depths before and after", () => {
  const before = { breakBeforeDish: 101, tailBeforeDish: 106 };
  const all = recordOf({ ...before, breakAfterDish: 99.5, tailAfterDish: 103.4 });

  it("is what the tail lost more than the break", () => {
    expect(tailExtraMeasured(all)).toBeCloseTo(1.1, 9);
    expect(tailExtraMeasured(recordOf({ ...before, breakAfterDish: 99.5 }))).toBeNull();
  });

  it("is offered to the plan with what it does to the pitch", () => {
    const offer = tailExtraOffer(defaultInstrument, all);
    expect(offer?.tailExtra).toBeCloseTo(1.1, 9);
    const dome = { ...defaultInstrument.dome, tailExtra: 1.1 };
    const { pitch } = solved({ ...defaultInstrument, dome });
    const said = sayPhrase(offer?.said ?? [], "mm");
    expect(said).toContain("the dish took 1.1 mm more off the tail end than off the break");
    expect(said).toContain(`the pitch is ${pitch.toFixed(2)}`);
    expect(tailExtraOffer({ ...defaultInstrument, dome }, all)).toBeNull();
  });

  it("expects after the dish what the plan takes off", () => {
    const plan = solved(defaultInstrument);
    const expected = expectedOf(defaultInstrument, all, "breakAfterDish");
    expect(expected?.value).toBeCloseTo(101 - plan.rimOffset, 9);
    expect(expectedOf(defaultInstrument, recordOf({}), "tailAfterDish")).toBeNull();
  });
});
