import fc from "fast-check";
import { describe, expect, expectTypeOf, it } from "vitest";
import type * as z from "zod/mini";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import type { instrumentSchema } from "../../src/instrument/schema.ts";

type DeepReadonly<T> = T extends object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;

function instrumentOf(json: unknown): Instrument {
  const reading = readInstrument(json);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.instrument;
}

function problemsOf(json: unknown) {
  const reading = readInstrument(json);
  return reading.ok ? [] : reading.problems;
}

const paths = (json: unknown) => problemsOf(json).map(({ path }) => path);

describe("reading an instrument", () => {
  it("yields exactly the type Instrument", () => {
    type Output = DeepReadonly<z.output<typeof instrumentSchema>>;
    expectTypeOf<Output>().toEqualTypeOf<Instrument>();
  });

  it("takes {} for the default instrument without a name", () => {
    expect(instrumentOf({})).toEqual({ ...defaultInstrument, id: "", name: "", notes: "" });
  });

  it("gives every group that is there but short its own defaults", () => {
    for (const group of ["body", "dome", "shim", "neck", "bridge", "strings", "target", "windows"])
      expect(instrumentOf({ [group]: {} })).toEqual(instrumentOf({}));
  });

  it("takes null for no dome, flat braces, a flat back and a flat fingerboard, and for nothing else", () => {
    const flat = {
      body: { backRadius: null },
      dome: { dishRadius: null, braceRadius: null },
      neck: { fingerboardRadius: null },
    };
    const { body, dome, neck } = instrumentOf(flat);
    expect([body.backRadius, dome.dishRadius, dome.braceRadius, neck.fingerboardRadius]).toEqual(
      Array(4).fill(null),
    );
    expect(paths({ body: { length: null }, shim: null })).toEqual(["body.length", "shim"]);
  });

  it("gives a target without a value the default of its kind", () => {
    expect(instrumentOf({ target: { kind: "pitch" } }).target).toEqual({
      kind: "pitch",
      value: 1.4,
    });
  });

  it("leaves out what it does not know", () => {
    const stranger = { body: { colour: "red" }, colour: "red", "<b>": 1 };
    expect(instrumentOf(stranger)).toEqual(instrumentOf({}));
  });

  it("keeps texts as they are, markup and all", () => {
    const name = "<img src=x onerror=alert(1)> ‮\ud800";
    expect(instrumentOf({ name, notes: name }).name).toBe(name);
  });

  it("reads its own output, written as JSON, as the same instrument", () => {
    const number = fc.double({ noNaN: true, min: -1, max: 200 });
    const json = fc.record(
      {
        name: fc.string(),
        dome: fc.record({ tailExtra: number, dishRadius: fc.option(number) }),
        windows: fc.record({ pitch: fc.tuple(number, number) }, { requiredKeys: [] }),
        tolerances: fc.dictionary(fc.constantFrom("dome.tailExtra", "neck.relief"), number),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(json, (written) => {
        const reading = readInstrument(written);
        fc.pre(reading.ok);
        expect(instrumentOf(JSON.parse(JSON.stringify(reading.instrument)))).toEqual(
          reading.instrument,
        );
      }),
    );
    expect(Object.is(instrumentOf({ dome: { tailExtra: -0 } }).dome.tailExtra, 0)).toBe(true);
  });
});

describe("refusing what is not an instrument", () => {
  it("never throws, and names at least one problem whenever it refuses", () => {
    const value = fc.anything({
      withNullPrototype: true,
      withBigInt: true,
      withDate: true,
      withMap: true,
      withSparseArray: true,
    });
    const nested = fc.dictionary(
      fc.constantFrom(
        "format",
        "version",
        "name",
        "body",
        "dome",
        "target",
        "windows",
        "tolerances",
      ),
      fc.oneof(
        value,
        fc.dictionary(fc.constantFrom("length", "kind", "value", "pitch", "__proto__"), value),
      ),
    );
    fc.assert(
      fc.property(fc.oneof(value, nested), (json) => {
        const reading = readInstrument(json);
        if (reading.ok) return;
        expect(reading.problems.length).toBeGreaterThan(0);
        for (const { message } of reading.problems) expect(message).not.toContain("Invalid");
      }),
      { numRuns: 500 },
    );
  });

  it("says what a number may be and what it is", () => {
    expect(problemsOf({ body: { length: -3 } })).toEqual([
      {
        path: "body.length",
        message: "body.length must be between 100 and 1500 mm; it is -3.",
        range: [100, 1500],
      },
    ]);
    expect(problemsOf({ dome: { dishRadius: "28 ft" } })[0]?.message).toBe(
      "dome.dishRadius must be between 1 and 1000000000 mm (or null: none); it is the text “28 ft”.",
    );
    expect(problemsOf({ strings: { count: 2.5 } })[0]?.message).toBe(
      "strings.count must be a whole number between 1 and 18; it is 2.5.",
    );
  });

  it("takes no number that is not finite", () => {
    expect(
      paths(JSON.parse('{"bridge": {"thickness": 1e999}, "target": {"value": 1e999}}')),
    ).toEqual(["bridge.thickness", "target.value"]);
    expect(paths({ neck: { relief: Number.NaN } })).toEqual(["neck.relief"]);
  });

  it("names every problem, each once", () => {
    expect(paths({ neck: { joinFret: 1e10, scale: 0 }, strings: { count: "6" } })).toEqual([
      "neck.scale",
      "neck.joinFret",
      "strings.count",
    ]);
  });

  it.each([[[]], [null], ["{}"], [7], [true]])("refuses %j, which is no object", (json) => {
    expect(paths(json)).toEqual([""]);
  });

  it("refuses another format, and says which it met", () => {
    expect(problemsOf({ format: "recipe" })).toEqual([
      {
        path: "format",
        message: "This is not a Rimwright instrument: its format is the text “recipe”.",
      },
    ]);
  });

  it("refuses a newer version by saying so, and any other by asking for 1", () => {
    expect(problemsOf({ version: 2 })[0]?.message).toContain("version 2");
    expect(problemsOf({ version: 2 })[0]?.message).toContain("newer");
    expect(problemsOf({ version: "1" })[0]?.message).toBe("version must be 1; it is the text “1”.");
  });

  it("refuses texts that are too long, and says how long they may be", () => {
    expect(problemsOf({ name: "x".repeat(201) })).toEqual([
      { path: "name", message: "name must be 200 characters at most; it is 201 long." },
    ]);
    expect(paths({ notes: "x".repeat(10_001), id: "x".repeat(101) })).toEqual(["id", "notes"]);
    expect(
      paths({ name: "x".repeat(200), notes: "x".repeat(10_000), id: "x".repeat(100) }),
    ).toEqual([]);
  });

  it("takes tolerances of nothing but numeric fields, and none below zero", () => {
    expect(paths({ tolerances: { "windows.pitch.0": 0, "target.value": 0.1 } })).toEqual([]);
    const strange =
      '{"tolerances": {"constructor": 1, "toString": 1, "body": 1, "neck.scale": -1}}';
    expect(paths(JSON.parse(strange))).toEqual([
      "tolerances.neck.scale",
      "tolerances.constructor",
      "tolerances.toString",
      "tolerances.body",
    ]);
  });

  it("lets no key reach a prototype", () => {
    const trap = '{"polluted": true, "length": 480}';
    const json = `{"__proto__": ${trap}, "body": {"__proto__": ${trap}}, "tolerances": {"__proto__": ${trap}}}`;
    const { body, tolerances } = instrumentOf(JSON.parse(json));
    expect(body.length).toBe(defaultInstrument.body.length);
    expect(Object.keys(tolerances)).toEqual([]);
    expect("polluted" in tolerances || "polluted" in {}).toBe(false);
  });
});

describe("numbers that depend on one another", () => {
  it("wants the outline's places in order, and says what range is left to each", () => {
    expect(problemsOf({ body: { waistAt: 120 } })).toEqual([
      {
        path: "body.lowerBoutAt",
        message: "body.lowerBoutAt must be between the tail and waistAt: 1 to 119 mm; it is 125.",
        range: [1, 119],
      },
      {
        path: "body.waistAt",
        message:
          "body.waistAt must be between lowerBoutAt and upperBoutAt: 126 to 394 mm; it is 120.",
        range: [126, 394],
      },
    ]);
    expect(paths({ body: { length: 395 } })).toEqual(["body.upperBoutAt"]);
  });

  it("takes either end of the range it gives", () => {
    for (const waistAt of [126, 394]) expect(paths({ body: { waistAt } })).toEqual([]);
  });

  it("gives no range where none is left", () => {
    const [, waist] = problemsOf({ body: { lowerBoutAt: 350, waistAt: 300, upperBoutAt: 340 } });
    expect(waist?.path).toBe("body.waistAt");
    expect(waist).not.toHaveProperty("range");
  });

  it("wants the low end of a window first", () => {
    expect(problemsOf({ windows: { pitch: [2, 1] } })).toEqual([
      {
        path: "windows.pitch.1",
        message: "windows.pitch.1 must be no less than the low end, 2; it is 1.",
        range: [2, 45],
      },
    ]);
    expect(paths({ windows: { pitch: [1.5, 1.5] } })).toEqual([]);
    expect(
      paths({ windows: { pitch: [1], stringHeight: [1, 2, 3], breakAngle: 4 } }).sort(),
    ).toEqual(["windows.breakAngle", "windows.pitch", "windows.stringHeight"]);
  });

  it("holds a target to the range of its kind", () => {
    expect(paths({ target: { kind: "shim", value: 60 } })).toEqual([]);
    expect(problemsOf({ target: { kind: "pitch", value: 60 } })[0]?.range).toEqual([-45, 45]);
    expect(paths({ target: { kind: "height" } })).toEqual(["target.kind"]);
  });
});
