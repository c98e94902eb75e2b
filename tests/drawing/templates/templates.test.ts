import { describe, expect, test } from "vitest";
import { edgePolyline } from "../../../src/drawing/edge-polyline.ts";
import { braceArc, bracesTemplate } from "../../../src/drawing/templates/brace-template.ts";
import {
  halfOutlineTemplate,
  wholeOutlineTemplate,
} from "../../../src/drawing/templates/outline-template.ts";
import { gaugeTemplate } from "../../../src/drawing/templates/shim-gauge.ts";
import {
  sideBackPolyline,
  sidePatternTemplate,
  sideTopPolyline,
} from "../../../src/drawing/templates/side-pattern-template.ts";
import { strayLimit } from "../../../src/drawing/templates/template.ts";
import { lengthOf, offPolyline, type Place } from "../../../src/geometry/polyline.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { sideOf } from "../../../src/profile/side.ts";
import { outlinePoints } from "../../support/precise-outline.ts";
import { planned } from "../../support/solved.ts";
import { pointedCutaway, roundedCutaway } from "../../support/uneven-bodies.ts";

const inMm = (mm: number): string => `${mm.toFixed(2)} mm`;
const words = { length: inMm, radius: inMm };

const worstOff = (places: readonly Place[], from: readonly Place[]): number =>
  Math.max(...places.map((place) => offPolyline(place, from)));

describe.each(presets.map((instrument) => [instrument.name, instrument] as const))(
  "%s",
  (_, instrument) => {
    const { givens, profile } = planned(instrument);
    const side = sideOf(givens, profile);

    // The four Bezier pieces worked in 50 digits, independent of the core's.
    test("the half outline keeps within 0.02 mm of the curve, both candidates", () => {
      const exact = outlinePoints(instrument.body, 200);
      const edge = edgePolyline(givens.outline, strayLimit);
      expect(worstOff(exact, edge)).toBeLessThan(0.02);
      expect(worstOff(edge, exact)).toBeLessThan(0.02);
      expect(edge[0]).toEqual([0, 0]);
      expect(edge.at(-1)).toEqual([instrument.body.length, instrument.body.neckEndWidth / 2]);
    });

    test("the side is as long as a fine polyline of the outline", () => {
      const fine = lengthOf(outlinePoints(instrument.body, 2000));
      expect(fine).toBeLessThan(side.corner);
      expect(side.corner - fine).toBeLessThan(1e-4);
    });

    test("the side's edges keep within 0.02 mm of their curves", () => {
      const [top, back] = [sideTopPolyline(side), sideBackPolyline(side)];
      for (let s = 0; s <= side.length; s += 1.37) {
        expect(offPolyline([s, -side.topAt(s)], top)).toBeLessThan(0.02);
        expect(offPolyline([s, -side.backAt(s)], back)).toBeLessThan(0.02);
      }
    });

    test("every template is of plain numbers", () => {
      const shape = { length: instrument.body.lowerBoutWidth, radius: instrument.dome.braceRadius };
      const templates = [
        halfOutlineTemplate(givens, profile, words),
        sidePatternTemplate(side, words),
        bracesTemplate([shape], "Top brace", words),
        gaugeTemplate({ name: "Shim", value: profile.shim }, words),
      ];
      for (const template of templates) {
        expect(template).not.toBeNull();
        const numbers = template?.lines.flatMap(({ places }) => places.flat()) ?? [];
        expect(numbers.length).toBeGreaterThan(0);
        expect(numbers.every(Number.isFinite)).toBe(true);
      }
    });
  },
);

test("a brace's arc lies on its circle and keeps within 0.02 mm of it", () => {
  const [length, radius] = [385, 28 * 304.8];
  const arc = braceArc({ length, radius });
  // Centre under the middle by the radius, less what the ends fall: √(R² − (L/2)²) under the ends' line.
  const under = Math.sqrt(radius ** 2 - (length / 2) ** 2);
  for (const [x, y] of arc) expect(Math.hypot(x, y + under)).toBeCloseTo(radius, 9);
  for (let x = -length / 2; x <= length / 2; x += 0.7)
    expect(offPolyline([x, Math.sqrt(radius ** 2 - x * x) - under], arc)).toBeLessThan(0.02);
});

test("the shim gauge's notch is as wide as the shim is thick", () => {
  const gauge = gaugeTemplate({ name: "Shim", value: 7.62 }, words);
  const upper = gauge?.lines[0]?.places.filter(([, y]) => y === 45).map(([x]) => x) ?? [];
  expect([...upper].sort((a, b) => a - b)).toEqual([0, 20, 27.62, 47.62]);
  const said = gauge?.labels.map(({ text }) => text).join(" ");
  expect(said).toContain("19/64 in to the nearest 64th");
  expect(said).toContain("right where the notch slides on and does not shake");
  expect(gaugeTemplate({ name: "Shim", value: 0.4 }, words)).toBeNull();
});

test("the boards of several braces lie clear of each other, each arc on its own circle", () => {
  const braces = [
    { length: 385, radius: 28 * 304.8 },
    { length: 240, radius: 3000 },
    { length: 120, radius: null },
  ];
  const { lines, labels } = bracesTemplate(braces, "Top brace", words);
  const boards = lines.filter(({ layer }) => layer === "cut").map(({ places }) => places);
  expect(boards).toHaveLength(3);
  const heights = boards.map((places) => places.map(([, y]) => y));
  for (let i = 1; i < boards.length; i++)
    expect(Math.max(...(heights[i] ?? []))).toBeLessThan(Math.min(...(heights[i - 1] ?? [])) - 5);
  braces.forEach(({ length, radius }, i) => {
    const arc = (boards[i] ?? []).slice(0, -2);
    const ends = arc[0]?.[1] ?? 0;
    expect(Math.abs(arc[0]?.[0] ?? 0)).toBeCloseTo(length / 2, 9);
    for (const [x, y] of arc) {
      // Pythagoras: the circle's centre lies √(R² − (L/2)²) under the line between the ends.
      if (radius === null) expect(y).toBe(ends);
      else
        expect(Math.hypot(x, y - ends + Math.sqrt(radius ** 2 - (length / 2) ** 2))).toBeCloseTo(
          radius,
          7,
        );
    }
    expect(labels.some(({ text }) => text.startsWith(`Top brace ${i + 1}: `))).toBe(true);
  });
});

describe.each([roundedCutaway, pointedCutaway].map((one) => [one.name, one] as const))(
  "the templates of a body with a %s",
  (_, instrument) => {
    const { givens, profile } = planned(instrument);

    test("draw the whole outline with each half on its side, and turned over for the left hand", () => {
      const whole = wholeOutlineTemplate(givens, profile, words);
      const edge = whole.lines.find(({ role }) => role === "outline")?.places ?? [];
      for (const { outline, sign } of givens.halves)
        for (let i = 1; i < 300; i++) {
          const [x, y] = outline.placeAtArc((outline.totalArc() * i) / 300);
          expect(offPolyline([x, sign * y], edge)).toBeLessThan(0.02);
        }
      const body = { ...instrument.body, leftHanded: true as const };
      const left = planned({ ...instrument, body });
      const turned = wholeOutlineTemplate(left.givens, left.profile, words);
      const over = turned.lines.find(({ role }) => role === "outline")?.places ?? [];
      expect(over.map(([x, y]) => [x, 0 - y])).toEqual(edge.map(([x, y]) => [x, y + 0]));
    });

    test("cut each side to its own length and under its own name", () => {
      const lengths = givens.halves.map((half) => {
        const side = sideOf(givens, profile, half);
        const { name, lines } = sidePatternTemplate(side, words, `${half.side} side`);
        expect(name).toBe(`${half.side} side`);
        const top = lines[0]?.places ?? [];
        return Math.max(...top.map(([x]) => x));
      });
      expect(lengths[1]).toBeGreaterThan((lengths[0] ?? 0) + 50);
    });
  },
);
