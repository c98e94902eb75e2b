import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { readField, writeField } from "../../src/instrument/field-value.ts";
import {
  defaultTolerances,
  fieldAt,
  fieldGroups,
  fieldPaths,
  isFieldPath,
  pathsIn,
} from "../../src/instrument/fields.ts";
import { targetKinds } from "../../src/instrument/outcome-fields.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";

describe("a number by its path", () => {
  it("is read wherever it stands", () => {
    expect(readField(defaultInstrument, "body.length")).toBe(492);
    expect(readField(defaultInstrument, "target.value")).toBe(3.4);
    expect(readField(defaultInstrument, "windows.breakAngle.1")).toBe(35);
  });

  it("is null where the instrument has null", () => {
    const flat = writeField(defaultInstrument, "dome.dishRadius", null);
    expect(readField(flat, "dome.dishRadius")).toBeNull();
    expect(readInstrument(flat)).toEqual({ ok: true, instrument: flat });
  });

  it("is written alone: every other path keeps its number, and the old instrument too", () => {
    const before = JSON.stringify(defaultInstrument);
    fc.assert(
      fc.property(fc.constantFrom(...fieldPaths), fc.double({ noNaN: true }), (path, value) => {
        const after = writeField(defaultInstrument, path, value);
        for (const other of fieldPaths)
          expect(readField(after, other)).toBe(
            other === path ? value : readField(defaultInstrument, other),
          );
      }),
    );
    expect(JSON.stringify(defaultInstrument)).toBe(before);
  });

  it("shares the branches it does not touch, and the whole when nothing changes", () => {
    const after = writeField(defaultInstrument, "windows.pitch.0", 0.9);
    expect(after.body).toBe(defaultInstrument.body);
    expect(after.windows.breakAngle).toBe(defaultInstrument.windows.breakAngle);
    expect(after.windows.pitch).toEqual([0.9, 2]);
    expect(writeField(defaultInstrument, "body.length", 492)).toBe(defaultInstrument);
  });
});

const field = (path: (typeof fieldPaths)[number]) => fieldAt(path, "saddleExposure");

/** Every path in the instrument at which a number stands. */
function numbersIn(node: unknown, path: string): string[] {
  if (typeof node === "number") return [path];
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => numbersIn(value, `${path}.${key}`));
}

describe("the table of fields", () => {
  it("has every number of an instrument, and nothing else", () => {
    const { version: _, tolerances: __, ...groups } = defaultInstrument;
    const numbers = Object.entries(groups).flatMap(([key, group]) => numbersIn(group, key));
    expect([...fieldPaths].sort()).toEqual(numbers.sort());
  });

  it("is all in the groups, in a builder's order", () => {
    expect(fieldGroups.flatMap(([group]) => pathsIn(group)).sort()).toEqual([...fieldPaths].sort());
    expect(fieldGroups[0]).toEqual(["bench", "At the bench"]);
    expect(pathsIn("bench")[0]).toBe("target.value");
    expect(pathsIn("bridge")).toEqual([
      "bridge.compensation",
      "bridge.slant",
      "bridge.pinDistance",
      "bridge.pinRamp",
    ]);
    expect(pathsIn("dome").at(-1)).toBe("shim.tailBlockDepth");
  });

  it.each(fieldPaths)("%s: the default instrument has its default, within its limits", (path) => {
    const { min, max, step, default: usual } = field(path);
    expect(readField(defaultInstrument, path)).toBe(usual);
    expect(min).toBeLessThanOrEqual(usual);
    expect(usual).toBeLessThanOrEqual(max);
    expect(step).toBeGreaterThan(0);
  });

  it.each(fieldPaths.filter((path) => !/^windows|^body.*(\.length|At$)/.test(path)))(
    "%s: reading takes both limits and refuses what lies beyond",
    (path) => {
      const { min, max, quantity } = field(path);
      const past = quantity === "count" ? 1 : 1e-6 * Math.max(1, Math.abs(max));
      for (const value of [min, max])
        expect(readInstrument(writeField(defaultInstrument, path, value)).ok).toBe(true);
      for (const value of [min - past, max + past])
        expect(readInstrument(writeField(defaultInstrument, path, value))).toMatchObject({
          ok: false,
          problems: [{ path, range: [min, max] }],
        });
    },
  );

  it.each(fieldPaths)("%s: null is taken exactly where there is a word for it", (path) => {
    const { ok } = readInstrument(writeField(defaultInstrument, path, null));
    expect(ok).toBe(field(path).nullWord !== undefined);
  });

  it("speaks of each field in one plain line", () => {
    for (const path of fieldPaths) {
      expect(field(path).label).toMatch(/^[A-Z]/);
      expect(field(path).howTo).toMatch(/^[A-Z0-9][^\n]*\.$/);
    }
  });

  it("gives the target the field of its kind", () => {
    for (const kind of targetKinds) expect(fieldAt("target.value", kind).label).not.toBe("");
    expect(fieldAt("target.value", "pitch").quantity).toBe("angle");
    expect(fieldAt("target.value", "shim").quantity).toBe("length");
  });

  it("knows a path from any other text", () => {
    expect(isFieldPath("windows.pitch.1")).toBe(true);
    for (const text of ["", "body", "toString", "__proto__", "body.name"])
      expect(isFieldPath(text)).toBe(false);
  });

  it("has tolerances for numeric fields only", () => {
    expect(Object.keys(defaultTolerances).every(isFieldPath)).toBe(true);
  });
});
