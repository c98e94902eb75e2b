import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { writeField } from "../../src/instrument/field-value.ts";
import { presets } from "../../src/instrument/presets.ts";
import { givensOf } from "../../src/profile/givens.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { plateZ } from "../../src/profile/seat.ts";
import { aimed, onSeat, refused, solved, solvedSeat } from "../support/solved.ts";

const seated = onSeat(defaultInstrument);

describe("a top domed all over, its seat sanded flat", () => {
  // By hand with a pocket calculator: a 28 ft sphere falls 202² / 17068.8 = 2.39 mm over the 202 mm from the
  // seat's far end to the saddle line and 28.5² / 17068.8 = 0.048 mm over half the seat's width. From the
  // spacer's 1.72 mm up to 0 at the neck end, 291 mm on, the bar's slope and the sphere's leave 0.56 mm.
  test("costs over half a millimetre of plate for the saddle that the flat gives for nothing", () => {
    const { seat, saddleExposure } = solvedSeat(seated);
    expect(saddleExposure).toBeCloseTo(solved(defaultInstrument).saddleExposure, 9);
    const [saddleX, fromX, length, radius, half] = [201.185, 399.847, 492, 8534.4, 28.5];
    const falls = (from: number, to: number) => (from - to) ** 2 / (2 * radius);
    const slope = (1.7195 - falls(length, saddleX) + half ** 2 / (2 * radius)) / (length - saddleX);
    const end = half ** 2 / (2 * radius) - falls(length, fromX) - slope * (length - fromX);
    expect(seat.endCut).toBeCloseTo(end, 2);
    expect(seat.endCut).toBeGreaterThan(0.5);
  });

  test("costs a fifth of a millimetre with strings a millimetre and a half higher", () => {
    const more = aimed(seated, "saddleExposure", 4.9);
    expect(solvedSeat(more).seat.mostCut).toBeGreaterThan(0.15);
    expect(solvedSeat(more).seat.mostCut).toBeLessThan(0.25);
  });

  test("takes the very same off the plate however the dish was tilted: only the pitch follows", () => {
    const tilted = writeField(seated, "dome.tailExtra", 1.5);
    const [own, other] = [solvedSeat(seated), solvedSeat(tilted)];
    expect(other.seat).toEqual(own.seat);
    expect(other.pitch).not.toBeCloseTo(own.pitch, 2);
  });

  test("has neither shim nor break, and its spacer is the gap at the saddle line", () => {
    const { shim, cleanShim, breakX, breakHalfWidth, dishUndercut, overrunLength, ...rest } =
      solvedSeat(seated);
    expect([shim, cleanShim, breakX, breakHalfWidth, dishUndercut, overrunLength]).toEqual([
      null,
      null,
      null,
      null,
      null,
      0,
    ]);
    expect(rest.seat.spacer).toBeCloseTo(rest.flatGap, 12);
    expect(rest.stations.every(({ zone }) => zone === "dome")).toBe(true);
    expect(rest.stations.map(({ name }) => name)).not.toContain("break");
  });

  test("does not mind what only the other method has", () => {
    const changed = writeField(
      writeField(writeField(seated, "dome.flatLength", 140), "shim.contact", 5),
      "dome.blendLength",
      10,
    );
    expect(solvedSeat(changed)).toEqual(solvedSeat(seated));
  });
});

describe("the plate on the seat", () => {
  test.each(presets.map((one) => [one.name, one] as const))(
    "stands leastCut over it at its lowest corner; braces arched as the dish, nowhere less: %s",
    (_, preset) => {
      for (const braceRadius of [preset.dome.dishRadius, 5000, 12_000, null]) {
        const instrument = {
          ...onSeat({ ...preset, dome: { ...preset.dome, braceRadius } }),
          seat: { ...preset.seat, leastCut: 0.15 },
          target: { kind: "stringHeight", value: 12 },
        } as const;
        const set = givensOf(instrument);
        const { dome } = solvedSeat(instrument);
        if (!set.ok || set.givens.seat === null) throw new Error("no seat");
        const { givens } = set;
        const { fromX, end, neckEnd } = set.givens.seat;
        const [halfWidth, neckHalfWidth] = [end[0], neckEnd[0]];
        const atCorners = Math.min(
          plateZ(givens, dome, fromX, halfWidth),
          plateZ(givens, dome, preset.body.length, neckHalfWidth),
        );
        expect(atCorners).toBeCloseTo(0.15, 10);
        if (braceRadius !== preset.dome.dishRadius) continue;
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= 20; i++)
          for (let j = 0; j <= 10; j++) {
            const x = fromX + ((preset.body.length - fromX) * i) / 20;
            const half = halfWidth + ((neckHalfWidth - halfWidth) * i) / 20;
            least = Math.min(least, plateZ(givens, dome, x, (half * j) / 10));
          }
        expect(least).toBeCloseTo(0.15, 9);
      }
    },
  );

  test("is cut on the centreline as the profile says, at its most too", () => {
    for (const value of [3, 3.4, 4.5, 6]) {
      const instrument = aimed(seated, "saddleExposure", value);
      const { seat, dome, fingerboardEndX } = solvedSeat(instrument);
      const set = givensOf(instrument);
      if (!set.ok) throw new Error("no givens");
      const along = Array.from({ length: 401 }, (_, i) =>
        plateZ(set.givens, dome, fingerboardEndX + ((492 - fingerboardEndX) * i) / 400, 0),
      );
      expect(seat.endCut).toBeCloseTo(along[0] ?? Number.NaN, 12);
      expect(seat.neckEndCut).toBeCloseTo(along.at(-1) ?? Number.NaN, 12);
      expect(seat.mostCut).toBeGreaterThanOrEqual(Math.max(...along) - 1e-12);
      expect(seat.mostCut).toBeLessThan(Math.max(...along) + 1e-5);
      expect(seat.thicknessLeft).toBe(instrument.seat.topThickness - seat.mostCut);
    }
  });
});

describe("where both ways must agree they do", () => {
  const level = {
    ...defaultInstrument,
    dome: { ...defaultInstrument.dome, dishRadius: null, braceRadius: null },
  };

  test("without a dome the flat without a shim and the seat without a spacer are one plane", () => {
    const flat = solved(aimed(level, "shim", 0));
    const seat = solvedSeat(aimed(onSeat(level), "spacer", 0));
    expect(seat.seat).toMatchObject({ mostCut: 0, endCut: 0, neckEndCut: 0 });
    for (const key of [
      "pitch",
      "flatGap",
      "saddleExposure",
      "stringHeight",
      "breakAngle",
      "maxRemoval",
    ] as const)
      expect(seat[key]).toBeCloseTo(flat[key], 12);
    expect(seat.stockWidth).toBeCloseTo(flat.stockWidth, 9);
  });

  test("a dome of endless radius comes to no dome", () => {
    const round = 1e9;
    const wide = { ...level, dome: { ...level.dome, dishRadius: round, braceRadius: round } };
    const [own, plane] = [wide, level].map((one) => solvedSeat(aimed(onSeat(one), "spacer", 2)));
    expect(own?.pitch).toBeCloseTo(plane?.pitch ?? Number.NaN, 5);
    expect(own?.seat.mostCut).toBeCloseTo(plane?.seat.mostCut ?? Number.NaN, 4);
    expect(own?.maxRemoval).toBeCloseTo(plane?.maxRemoval ?? Number.NaN, 3);
  });

  test("the saddle asked for is had either way, and strings and bridge with it", () => {
    for (const preset of presets) {
      const target = { kind: "stringHeight", value: 12.5 } as const;
      const [one, other] = [
        solved({ ...preset, target }),
        solvedSeat(onSeat({ ...preset, target })),
      ];
      for (const key of ["flatGap", "bridgeClearance", "saddleExposure", "stringHeight"] as const)
        expect(other[key]).toBeCloseTo(one[key], 9);
    }
  });
});

describe("refused, with what would work", () => {
  test("a shim for a target", () => {
    const { field, why } = refused(aimed(seated, "shim", 8));
    expect(field).toBe("target.value");
    expect(why.join("")).toContain("no target here");
  });

  test("a spacer for a target of a rim with a break", () => {
    expect(refused(aimed(defaultInstrument, "spacer", 2)).field).toBe("target.value");
  });

  test("a fingerboard that ends past the saddle", () => {
    const long = writeField(seated, "neck.lastFret", 40);
    const past = writeField(long, "neck.fingerboardOverhang", 120);
    const { field, nearest } = refused(past);
    expect(field).toBe("neck.fingerboardOverhang");
    expect(
      solvedSeat(writeField(past, "neck.fingerboardOverhang", nearest)).seat.spacer,
    ).toBeCloseTo(solvedSeat(seated).seat.spacer, 6);
  });

  test("a spacer that puts the tail under the rim's own depth; the nearest leaves some plate", () => {
    const { why, nearest } = refused(aimed(seated, "spacer", 150));
    expect(why.join("")).toContain("out of its reach");
    const met = solvedSeat(aimed(seated, "spacer", nearest ?? Number.NaN));
    expect(met.seat.thicknessLeft).toBeCloseTo(0, 6);
  });
});

describe("the reachable spacer", () => {
  test("leaves some plate up to its ends, and none beyond", () => {
    for (const preset of presets) {
      const own = onSeat({ ...preset, target: { kind: "stringHeight", value: 12.5 } });
      const [low, high] = solvedSeat(own).reachable.spacer;
      const left = (spacer: number): number =>
        solvedSeat(aimed(own, "spacer", spacer)).seat.thicknessLeft;
      expect(left((low + high) / 2)).toBeGreaterThan(0);
      expect(left(high)).toBeCloseTo(0, 8);
      expect(left(high + 0.5)).toBeLessThan(0);
      if (low > 0) expect(left(low)).toBeCloseTo(0, 8);
      const stops = solvedSeat(aimed(own, "spacer", high + 0.5)).checks.filter(
        ({ id }) => id === "plate-gone",
      );
      expect(stops.map(({ grade }) => grade)).toEqual(["stop"]);
    }
  });

  test("is all that the rim allows where no spacer leaves any plate", () => {
    const thin = writeField(writeField(seated, "seat.topThickness", 0.2), "seat.leastCut", 0.5);
    const result = profileOf(aimed(thin, "spacer", 2));
    expect(result.ok && result.profile.reachable.spacer?.[0]).toBe(0);
  });
});

describe("a check on the seat", () => {
  const ids = (instrument: typeof seated): readonly string[] =>
    solvedSeat(instrument).checks.map(({ id }) => id);

  test("warns of a plate under 2 mm, and just does not above", () => {
    const { mostCut } = solvedSeat(seated).seat;
    const plate = (thick: number) => ids(writeField(seated, "seat.topThickness", thick));
    expect(plate(2 + mostCut - 0.001)).toContain("plate-thin");
    expect(plate(2 + mostCut + 0.001)).not.toContain("plate-thin");
    expect(plate(mostCut)).toContain("plate-gone");
  });

  test("warns of a seat wider than the body, and just does not at its width", () => {
    const wide = (width: number) => ids(writeField(seated, "seat.fingerboardWidth", width));
    expect(wide(60.01)).toContain("seat-too-wide");
    expect(wide(60)).not.toContain("seat-too-wide");
  });

  test("says nothing of break, overrun, blend or shim", () => {
    const odd = writeField(writeField(seated, "dome.flatLength", 300), "shim.contact", 90);
    for (const id of ids(odd)) expect(id).not.toMatch(/break|overrun|blend|contact|flat/);
  });
});
