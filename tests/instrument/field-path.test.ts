import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { readField, writeField } from "../../src/instrument/field-path.ts";
import { fieldPaths } from "../../src/instrument/fields.ts";
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
