import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import {
  fieldFigure,
  parseCount,
  parseField,
  styleOf,
  unitAfter,
} from "../../src/instrument/field-text.ts";
import { readField } from "../../src/instrument/field-value.ts";
import type { FieldPath } from "../../src/instrument/fields.ts";
import { fieldAt, fieldPaths } from "../../src/instrument/fields.ts";

const field = (path: FieldPath) => fieldAt(path, "saddleExposure");
const units = ["mm", "in", "in-fraction"] as const;

describe("what is typed into a field", () => {
  it("is in the unit the field shows: a dish in feet, a fingerboard's radius in inches", () => {
    expect(parseField("28", field("dome.dishRadius"), "in")).toEqual({ ok: true, value: 8534.4 });
    expect(parseField("16", field("neck.fingerboardRadius"), "in")).toEqual({
      ok: true,
      value: 406.4,
    });
    expect(parseField("8500", field("dome.dishRadius"), "mm")).toEqual({ ok: true, value: 8500 });
  });

  it("is null for the field's own word, and only there", () => {
    expect(parseField(" None ", field("dome.dishRadius"), "mm")).toEqual({ ok: true, value: null });
    expect(parseField("flat", field("body.backRadius"), "in")).toEqual({ ok: true, value: null });
    expect(parseField("flat", field("dome.dishRadius"), "mm").ok).toBe(false);
    expect(parseField("none", field("body.length"), "mm").ok).toBe(false);
  });

  it("is an angle or a count where the field is one", () => {
    expect(parseField("1.5°", field("neck.neckTilt"), "in")).toEqual({ ok: true, value: 1.5 });
    expect(parseField("12", field("neck.joinFret"), "in")).toEqual({ ok: true, value: 12 });
    expect(parseField("1.5 mm", field("neck.neckTilt"), "mm").ok).toBe(false);
  });

  it("must be whole for a count", () => {
    expect(parseCount("6.0")).toEqual({ ok: true, value: 6 });
    expect(parseCount("6 1/2")).toEqual({ ok: false, why: "This must be a whole number." });
    expect(parseCount("six").ok).toBe(false);
  });
});

describe("what a field shows", () => {
  it("is bare, in the reader's units, or the word for null", () => {
    expect(fieldFigure(492.125, field("body.length"), "mm")).toBe("492.13");
    expect(fieldFigure(492.125, field("body.length"), "in")).toBe("19.375");
    expect(fieldFigure(492.125, field("body.length"), "in-fraction")).toBe("19 3/8");
    expect(fieldFigure(8534.4, field("dome.dishRadius"), "in-fraction")).toBe("28");
    expect(fieldFigure(406.4, field("neck.fingerboardRadius"), "in-fraction")).toBe("16");
    expect(fieldFigure(null, field("dome.dishRadius"), "mm")).toBe("none");
    expect(fieldFigure(14, field("neck.joinFret"), "mm")).toBe("14");
    expect(fieldFigure(1.25, field("neck.neckTilt"), "in")).toBe("1.25");
  });

  it("keeps thousandths for what is too fine for 1/64 in", () => {
    expect(fieldFigure(0.15, field("neck.relief"), "in-fraction")).toBe("0.0059");
    expect(fieldFigure(2.3, field("strings.actionBass"), "in-fraction")).toBe("0.091");
    expect(styleOf(field("body.depthTail"), "in-fraction")).toEqual({ unit: "in", fraction: 64 });
  });

  it.each(fieldPaths)("%s: moves by a step of its stepper in every unit", (path) => {
    const value = readField(defaultInstrument, path) ?? 0;
    for (const each of units)
      expect(fieldFigure(value + field(path).step, field(path), each)).not.toBe(
        fieldFigure(value, field(path), each),
      );
  });

  it("is read back as what it shows", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...fieldPaths),
        fc.constantFrom(...units),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        (path, shownIn, value) => {
          const figure = fieldFigure(value, field(path), shownIn);
          const read = parseField(figure, field(path), shownIn);
          expect(read.ok && fieldFigure(read.value, field(path), shownIn)).toBe(figure);
        },
      ),
    );
  });
});

describe("the unit beside a text", () => {
  const beside = (text: string): string => unitAfter(text, field("body.length"), "mm");

  it("is the one a bare number is read in", () => {
    for (const text of ["492", "7,5", "19 3/8", ""]) expect(beside(text)).toBe("mm");
    expect(unitAfter("28", field("dome.dishRadius"), "in")).toBe("ft");
    expect(unitAfter("0.5", field("neck.neckTilt"), "mm")).toBe("°");
  });

  it("is left out after a text that states its own, and after a word or a count", () => {
    for (const text of ["19 3/8 in", '25.4"', "28' 6″", "492 mm", "none"])
      expect(beside(text)).toBe("");
    expect(unitAfter("6", field("strings.count"), "mm")).toBe("");
  });
});
