import { describe, expect, it } from "vitest";
import { type AsBuilt, emptyAsBuilt } from "../../src/instrument/as-built/as-built.ts";
import { measurementKeys } from "../../src/instrument/as-built/measurement-fields.ts";
import { readAsBuilt } from "../../src/instrument/as-built/read-as-built.ts";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { fieldPaths } from "../../src/instrument/fields.ts";
import { presets } from "../../src/instrument/presets.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";

/** Every place in a JSON value that holds a number. */
function numericPlaces(
  node: unknown,
  path: readonly string[] = [],
): readonly (readonly string[])[] {
  if (typeof node === "number") return [path];
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => numericPlaces(value, [...path, key]));
}

/** The same JSON with `value` at the place. */
function withNumber(json: unknown, place: readonly string[], value: number): unknown {
  const copy = structuredClone(json);
  let node = copy as Record<string, unknown>;
  for (const key of place.slice(0, -1)) node = node[key] as Record<string, unknown>;
  node[place.at(-1) ?? ""] = value;
  return copy;
}

const outOfBounds = [1e10, -1e10, Number.POSITIVE_INFINITY, Number.NaN];

const instrument = {
  ...defaultInstrument,
  tolerances: Object.fromEntries(fieldPaths.map((path) => [path, 0.1])),
};

const asBuilt: AsBuilt = {
  ...emptyAsBuilt,
  readings: Object.fromEntries(
    measurementKeys.map((key) => [key, { value: 0.5, date: "2026-05-14", note: "" }]),
  ),
  taken: [
    {
      remedy: "saddle",
      date: "2026-05-14",
      changes: [
        { path: "strings.count", value: 6 },
        { path: "bridge.pinDistance", value: 14 },
        { path: "target.value", value: 8 },
      ],
      offsets: { shim: 0, fretPlane: 0, stringHeight: 0, saddleExposure: 0 },
      replaced: { shim: { value: 8, date: "2026-05-14", note: "" } },
    },
  ],
  strings: [{ note: "E2", unitWeight: 0.02, diameter: 1.3 }],
};

describe("a number out of bounds is refused at every place of", () => {
  it.each([
    ["an instrument", instrument, readInstrument, 90],
    ["an as-built record", asBuilt, readAsBuilt, 35],
  ] as const)("%s", (_, json, read, least) => {
    expect(read(json).ok).toBe(true);
    const places = numericPlaces(json);
    expect(places.length).toBeGreaterThan(least);
    for (const place of places)
      for (const value of outOfBounds)
        expect(read(withNumber(json, place, value)).ok, `${place.join(".")} ${value}`).toBe(false);
  });
});

it("bounds a tolerance by its field's range, and what a correction changes by the field", () => {
  const tolerance = (path: string, value: number) =>
    readInstrument({ tolerances: { [path]: value } }).ok;
  expect([tolerance("strings.count", 17), tolerance("strings.count", 18)]).toEqual([true, false]);
  const change = (path: string, value: number) =>
    readAsBuilt(
      withNumber(
        { ...asBuilt, taken: [{ ...asBuilt.taken[0], changes: [{ path }] }] },
        ["taken", "0", "changes", "0", "value"],
        value,
      ),
    ).ok;
  expect(change("strings.count", 18)).toBe(true);
  for (const [path, value] of [
    ["strings.count", 3e6],
    ["neck.joinFret", 14.5],
    ["bridge.pinDistance", 0],
  ] as const)
    expect(change(path, value), path).toBe(false);
});

it("takes only days of the calendar", () => {
  const finished = (date: string) => readAsBuilt({ finished: date }).ok;
  expect(finished("2024-02-29")).toBe(true);
  for (const date of ["2026-02-29", "2026-13-01", "112520266", "+112520-06-06", ""])
    expect(finished(date), date).toBe(false);
});

it("leaves every preset as it is", () => {
  for (const preset of presets)
    expect(readInstrument(preset)).toEqual({ ok: true, instrument: preset });
});
