import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";

function instrumentOf(json: unknown): Instrument {
  const result = readInstrument(json);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.instrument;
}

function problemsOf(json: unknown) {
  const result = readInstrument(json);
  return result.ok ? [] : result.problems;
}

const paths = (json: unknown) => problemsOf(json).map(({ path }) => path);

describe("reading an instrument", () => {
  it("takes {} for the default instrument without a name", () => {
    const nameless = { ...defaultInstrument, id: "", name: "", notes: "" };
    expect(instrumentOf({})).toEqual(nameless);
    // In one order too, so that files of either are the same text.
    expect(JSON.stringify(instrumentOf({}))).toBe(JSON.stringify(nameless));
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
        const result = readInstrument(written);
        fc.pre(result.ok);
        expect(instrumentOf(JSON.parse(JSON.stringify(result.instrument)))).toEqual(
          result.instrument,
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
        const result = readInstrument(json);
        if (result.ok) return;
        expect(result.problems.length).toBeGreaterThan(0);
        for (const { message } of result.problems) expect(message).not.toContain("Invalid");
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
    expect(paths({ neck: { joinFret: 1e20, scale: 0 }, strings: { count: "6" } })).toEqual([
      "neck.scale",
      "neck.joinFret",
      "strings.count",
    ]);
  });

  it.each([[[]], [null], ["{}"], [7], [true]])("refuses %j, which is no object", (json) => {
    expect(paths(json)).toEqual([""]);
    expect(problemsOf(json)[0]?.message).toMatch(/^An instrument is a JSON object; this is /);
  });

  it("refuses another format, and says which it met", () => {
    expect(problemsOf({ format: "recipe" })).toEqual([
      {
        path: "format",
        message: "This is not a Rimwright instrument: its format is the text “recipe”.",
      },
    ]);
  });

  it("refuses a newer version by saying so, and any other by asking for one it knows", () => {
    expect(problemsOf({ version: 3 })[0]?.message).toContain("version 3");
    expect(problemsOf({ version: 3 })[0]?.message).toContain("newer");
    expect(problemsOf({ version: "1" })[0]?.message).toBe(
      "version must be 1 or 2; it is the text “1”.",
    );
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
    const json = `{"__proto__": ${trap}, "body": {"__proto__": ${trap}}}`;
    const { body, tolerances } = instrumentOf(JSON.parse(json));
    expect(body.length).toBe(defaultInstrument.body.length);
    expect(paths(JSON.parse(`{"tolerances": {"__proto__": ${trap}}}`))).toEqual([
      "tolerances.__proto__",
    ]);
    expect("polluted" in tolerances || "polluted" in {}).toBe(false);
  });
});
