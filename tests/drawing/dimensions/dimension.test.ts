import { describe, expect, test } from "vitest";
import { boxOf } from "../../../src/drawing/box.ts";
import {
  type Dimension,
  heightCandidates,
  lengthCandidates,
} from "../../../src/drawing/dimensions/dimension.ts";
import { arrowLength } from "../../../src/drawing/dimensions/dimension-line.ts";
import type { Point } from "../../../src/drawing/frame.ts";
import type { LabelCandidate } from "../../../src/drawing/label-placement.ts";
import { capHeight } from "../../../src/drawing/lettering.ts";
import { firstRow, nextRow } from "../../../src/drawing/section/section-layout.ts";
import { readPoints } from "../../support/read-scene.ts";

const height: Dimension = {
  role: "shim",
  texts: ["shim 8.4 mm", "8.4 mm"],
  from: [100, 40],
  to: [100, 90],
  offsets: [80, 65],
};

const first = (candidates: Iterable<LabelCandidate>): LabelCandidate => {
  for (const candidate of candidates) return candidate;
  throw new Error("no candidate");
};

const headsOf = (candidate: LabelCandidate): readonly (readonly Point[])[] =>
  candidate
    .shapes()
    .filter(({ role }) => role === "arrowhead")
    .map((shape) => (shape.kind === "path" ? readPoints(shape.d) : []));

describe("a height", () => {
  test("is dimensioned between its ends, the value level beside the line", () => {
    const candidate = first(heightCandidates(height, 13));
    expect(candidate.text).toMatchObject({ text: "shim 8.4 mm", anchor: "start" });
    expect(candidate.text.x).toBeGreaterThan(80);
    expect(candidate.text.y - capHeight(13) / 2).toBeCloseTo(65, 9);
    const [line] = candidate.strokes.slice(-1);
    expect(line).toEqual([
      [80, 40],
      [80, 90],
    ]);
  });

  test("has arrowheads that touch both ends from inside, or from outside when it is short", () => {
    const inside = headsOf(first(heightCandidates(height, 13))).map(boxOf);
    expect(inside.map(({ top, bottom }) => [top, bottom])).toEqual([
      [40, 40 + arrowLength],
      [90 - arrowLength, 90],
    ]);
    const short: Dimension = { ...height, to: [100, 46] };
    const outside = headsOf(first(heightCandidates(short, 13))).map(boxOf);
    expect(outside.map(({ top, bottom }) => [top, bottom])).toEqual([
      [40 - arrowLength, 40],
      [46, 46 + arrowLength],
    ]);
  });

  test("has extension lines that start off the part and end just past the line", () => {
    const [over, under] = first(heightCandidates(height, 13)).strokes;
    expect(over).toEqual([
      [98, 40],
      [77, 40],
    ]);
    expect(under?.[0]).toEqual([98, 90]);
  });

  test("is offered the cheapest candidate first, in every wording and on every offset", () => {
    const candidates = [...heightCandidates(height, 13)];
    const costs = candidates.map(({ cost }) => cost);
    expect([...costs].sort((a, b) => a - b)).toEqual(costs);
    expect(new Set(candidates.map(({ text }) => text.text))).toEqual(new Set(height.texts));
    expect(new Set(candidates.map(({ strokes }) => strokes.at(-1)?.[0]?.[0]))).toEqual(
      new Set([80, 65]),
    );
  });

  test("is dimensioned alike from either end", () => {
    const upsideDown = { ...height, from: height.to, to: height.from };
    expect(first(heightCandidates(upsideDown, 13)).strokes).toEqual(
      first(heightCandidates(height, 13)).strokes,
    );
  });
});

describe("a length", () => {
  const length: Dimension = {
    role: "flat length",
    texts: ["flat 100 mm"],
    from: [500, 40],
    to: [640, 40],
    offsets: [200],
  };

  test("has its value over the middle of the line", () => {
    const candidate = first(lengthCandidates(length, 13));
    expect(candidate.text).toMatchObject({ x: 570, anchor: "middle" });
    expect(candidate.text.y).toBeLessThan(200);
    expect(candidate.leader).toEqual([]);
  });

  test("can carry its value out beside it", () => {
    const out = [...lengthCandidates(length, 13)].find(({ text }) => text.anchor === "start");
    expect(out?.text.x).toBeGreaterThan(640);
    expect(out?.leader[0]).toEqual([640, 200]);
  });
});

// Dimension lines: first at least 10 mm from the outline, the next at least 6 mm on (ASME Y14.5
// text; ISO 129-1 from memory), on a sheet lettered 3.5 mm high (ISO 3098, from memory).
test.each([11, 12, 13, 14, 20])(
  "rows keep the drawing office's distances at %i px type",
  (size) => {
    const sheetMm = capHeight(size) / 3.5;
    expect(firstRow(size)).toBeGreaterThanOrEqual(10 * sheetMm - 1e-9);
    expect(nextRow(size)).toBeGreaterThanOrEqual(6 * sheetMm - 1e-9);
  },
);
