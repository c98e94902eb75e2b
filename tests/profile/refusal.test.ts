import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readField, writeField } from "../../src/instrument/field-value.ts";
import type { FieldPath } from "../../src/instrument/fields.ts";
import { fieldAt } from "../../src/instrument/fields.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { sayPhrase } from "../../src/instrument/phrase.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { nearestWorking } from "../../src/profile/nearest.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { even } from "../geometry/even.ts";
import { refused, solves } from "../support/solved.ts";
import { builderInstrument } from "./builder-instrument.ts";

function read(json: unknown): Instrument {
  const reading = readInstrument(json);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.instrument;
}

fc.configureGlobal({ seed: 20261125 });

/** With a shim given nothing hangs on where the saddle comes to stand. */
const shimmed = { kind: "shim", value: 8 };

/** Short files that cannot be solved, the field each is refused for, and its nearest value by hand where there is one. */
const refusals: readonly (readonly [string, object, FieldPath, number | null])[] = [
  ["a flat as long as the body", { dome: { flatLength: 492 } }, "dome.flatLength", null],
  ["a flat longer than the body", { dome: { flatLength: 900 } }, "dome.flatLength", null],
  [
    "a flat past the saddle",
    { dome: { flatLength: 300 }, target: shimmed },
    "dome.flatLength",
    null,
  ],
  [
    "a contact half a millimetre from the break",
    { shim: { contact: 391.5, tailBlockDepth: 400 }, target: shimmed },
    "shim.contact",
    null,
  ],
  [
    "a contact past the break",
    { shim: { contact: 450, tailBlockDepth: 450 } },
    "shim.contact",
    null,
  ],
  // The saddle reaches the tail end when scale·2^(−14/12) + 3.5 = 492.
  [
    "a scale too long for the body",
    { neck: { scale: 1300 }, target: shimmed },
    "neck.scale",
    488.5 * 2 ** (14 / 12),
  ],
  [
    "a join fret that sets the saddle past the tail",
    { neck: { scale: 700, joinFret: 5 } },
    "neck.scale",
    null,
  ],
  [
    "a board curved more than its strings are wide",
    { neck: { fingerboardRadius: 20 } },
    "neck.fingerboardRadius",
    27,
  ],
  [
    "a dish smaller than the body",
    { dome: { dishRadius: 150, braceRadius: null } },
    "dome.dishRadius",
    null,
  ],
  [
    "braces sharper than the body is wide",
    { dome: { braceRadius: 100 } },
    "dome.braceRadius",
    null,
  ],
  [
    "braces so sharp without a dome",
    { dome: { dishRadius: null, braceRadius: 100 }, target: shimmed },
    "dome.braceRadius",
    192.5,
  ],
  ["a back smaller than the body", { body: { backRadius: 100 } }, "body.backRadius", null],
  ["a shim under nothing", { target: { kind: "shim", value: -3 } }, "target.value", 0],
  ["a shim deeper than the tail", { target: { kind: "shim", value: 150 } }, "target.value", 104],
  ["a pitch too steep", { target: { kind: "pitch", value: 40 } }, "target.value", null],
  ["a pitch turned down", { target: { kind: "pitch", value: -40 } }, "target.value", null],
  [
    "a clearance out of reach",
    { target: { kind: "bridgeClearance", value: -100 } },
    "target.value",
    null,
  ],
  [
    "a saddle out of reach",
    { target: { kind: "saddleExposure", value: 150 } },
    "target.value",
    null,
  ],
  ["strings out of reach", { target: { kind: "stringHeight", value: -90 } }, "target.value", null],
];

describe.each(refusals)("%s", { timeout: 30_000 }, (_, json, field, byHand) => {
  const instrument = read(json);

  it("is refused by name of the field, in a sentence", () => {
    const refusal = refused(instrument);
    expect(refusal.field).toBe(field);
    expect(refusal.why.length).toBeGreaterThan(0);
    expect(refusal.why.at(-1)).toMatch(/[.]$/);
  });

  it("has a nearest value that works when put in, and nothing nearer does", () => {
    const { nearest } = refused(instrument);
    const own = readField(instrument, field);
    if (nearest === null || own === null) throw new Error("no nearest value");
    expect(solves(writeField(instrument, field, nearest))).toBe(true);
    if (byHand !== null) expect(Math.abs(nearest - byHand)).toBeLessThan(1e-6);
    const { quantity } = fieldAt(field, instrument.target.kind);
    if (quantity === "count") return;
    for (const part of [0.2, 0.5, 0.9, 0.999, 0.999999]) {
      const nearer = own + (nearest - own) * part;
      expect(solves(writeField(instrument, field, nearer)), `${nearer}`).toBe(false);
    }
  });

  it("keeps the nearest value within the field's own limits", () => {
    const { nearest } = refused(instrument);
    const { min, max } = fieldAt(field, instrument.target.kind);
    expect(nearest).toBeGreaterThanOrEqual(min);
    expect(nearest).toBeLessThanOrEqual(max);
  });
});

it("a flat past the saddle is sent back until the break lies just neckward of the saddle", () => {
  const { nearest } = refused(read({ dome: { flatLength: 300 }, target: shimmed }));
  const saddleToNeckEnd = 645 * 2 ** (-14 / 12) + 3.5;
  expect(nearest).toBeLessThan(saddleToNeckEnd);
  expect(nearest).toBeGreaterThan(saddleToNeckEnd - 0.1);
});

it("a break a thousandth from the saddle is the flat's fault, not the dish's", () => {
  const flatLength = 645 * 2 ** (-11 / 12) + 3.5 - 0.001;
  const close = { dome: { flatLength }, neck: { joinFret: 11 }, target: shimmed };
  const { field, nearest } = refused(read(close));
  expect(field).toBe("dome.flatLength");
  expect(nearest).toBeGreaterThan(flatLength - 1);
});

it("a dish too small for the body is blamed before braces smaller still, for neither would do alone", () => {
  const both = { dome: { dishRadius: 150, braceRadius: 100 }, target: shimmed };
  const { field, nearest, why } = refused(read(both));
  expect([field, nearest]).toEqual(["dome.dishRadius", null]);
  expect(sayPhrase(why, "mm")).toContain(
    "Dish radius alone will not mend it: change Brace radius too.",
  );
});

it("a target is not sent to an end of its reach where the back gives out", () => {
  const steep = { body: { backRadius: 252, depthNeck: 30, depthTail: 60 } };
  const at = (value: number) => profileOf(read({ ...steep, target: { kind: "shim", value } }));
  const far = at(150);
  if (far.ok || far.refusal.nearest === null) throw new Error("not refused, or nothing offered");
  expect(far.refusal.field).toBe("target.value");
  expect(at(far.refusal.nearest).ok).toBe(true);
});

it("a target out of reach is told the range rounded inward, so that the figures shown work", () => {
  const { why } = refused(read({ target: { kind: "stringHeight", value: 190 } }));
  const [low, high, asked] = why.filter((part) => typeof part !== "string");
  expect([low?.round, high?.round, asked?.value]).toEqual(["up", "down", 190]);
});

/** One field of a working instrument set where it cannot work. */
const broken = fc
  .record({
    instrument: builderInstrument,
    how: fc.nat({ max: 6 }),
    by: even(0.02, 0.95),
  })
  .map(({ instrument, how, by }): Instrument => {
    const { body, dome, neck } = instrument;
    const breakX = body.length - dome.flatLength;
    const options: readonly Instrument[] = [
      { ...instrument, dome: { ...dome, flatLength: body.length * (1 - by * 0.3) } },
      {
        ...instrument,
        shim: { contact: breakX + (body.length - breakX) * by, tailBlockDepth: body.length },
      },
      { ...instrument, neck: { ...neck, fingerboardRadius: 1 + 20 * by } },
      { ...instrument, dome: { ...dome, dishRadius: 150 * by, braceRadius: null } },
      { ...instrument, dome: { ...dome, braceRadius: 150 * by } },
      { ...instrument, body: { ...body, backRadius: 150 * by } },
      { ...instrument, neck: { ...neck, scale: 1200 + 300 * by } },
    ];
    return options[how] ?? instrument;
  });

it("any instrument broken in one field is refused, and the nearest value works", {
  timeout: 60_000,
}, () => {
  fc.assert(
    fc.property(broken, (instrument) => {
      const { field, nearest } = refused(instrument);
      if (nearest === null) throw new Error(`${field} has no nearest`);
      expect(solves(writeField(instrument, field, nearest))).toBe(true);
    }),
    { numRuns: 60 },
  );
});

describe("the search for a working value", () => {
  const base = read({});
  const flat = (works: (value: number) => boolean): number | null =>
    nearestWorking(base, "dome.flatLength", (changed) => works(changed.dome.flatLength));

  it("finds the boundary, from either side, and gives its working side", () => {
    expect(flat((value) => value >= 137.25)).toBeCloseTo(137.25, 8);
    expect(flat((value) => value <= 61.5)).toBeCloseTo(61.5, 8);
    fc.assert(
      fc.property(even(0, 1500), (edge) => {
        fc.pre(Math.abs(edge - 100) > 1);
        const works = (value: number): boolean => (edge > 100 ? value >= edge : value <= edge);
        const found = flat(works) ?? Number.NaN;
        expect(works(found)).toBe(true);
        expect(Math.abs(found - edge)).toBeLessThan(3e-9);
      }),
    );
  });

  it("takes the nearer of two, and a limit itself", () => {
    expect(flat((value) => value <= 40 || value >= 130)).toBeCloseTo(130, 8);
    expect(flat((value) => value === 1500)).toBe(1500);
    expect(flat((value) => value === 0)).toBe(0);
  });

  it("steps in whole numbers where the field counts", () => {
    const found = nearestWorking(base, "neck.joinFret", ({ neck }) => neck.joinFret >= 17);
    expect(found).toBe(17);
  });

  it("is null when nothing within the limits works, or the field holds none", () => {
    expect(flat(() => false)).toBeNull();
    const none = { ...base, dome: { ...base.dome, dishRadius: null } };
    expect(nearestWorking(none, "dome.dishRadius", () => true)).toBeNull();
  });
});
