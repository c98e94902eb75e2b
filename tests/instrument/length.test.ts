import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  formatLength,
  type LengthStyle,
  lengthFigure,
  nearest64,
  parseLength,
  shownAtLeast,
  shownAtMost,
} from "../../src/instrument/length.ts";

const styles: readonly (readonly [LengthStyle, resolution: number])[] = [
  [{ unit: "mm", decimals: 2 }, 0.01],
  [{ unit: "mm", decimals: 1, fixed: true }, 0.1],
  [{ unit: "in", decimals: 3 }, 0.0254],
  [{ unit: "in", fraction: 64 }, 25.4 / 64],
  [{ unit: "ft", decimals: 2 }, 3.048],
];
const anyStyle = fc.constantFrom(...styles);
const anyLength = fc.double({ min: -1e6, max: 1e6, noNaN: true });

function mmOf(text: string, bare: LengthStyle["unit"] = "mm"): number {
  const parsed = parseLength(text, bare);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.why}`);
  return parsed.mm;
}

function whyNot(text: string): string | undefined {
  const parsed = parseLength(text, "mm");
  return parsed.ok ? undefined : parsed.why;
}

// 1 in = 25.4 mm exactly: international yard and pound agreement, 1959. 1 ft = 12 in.
describe("reading a length", () => {
  it.each([
    ["7.5 mm", 7.5],
    ["7,5mm", 7.5],
    ["7.5 MM", 7.5],
    ["2 cm", 20],
    ["19 3/8 in", 492.125],
    ['19-3/8"', 492.125],
    ["19 – 3/8 inches", 492.125],
    ['25.4"', 645.16],
    ["25.4″", 645.16],
    ["25.4”", 645.16],
    ["25.4''", 645.16],
    ["1 in.", 25.4],
    ["28 ft", 8534.4],
    ["28'", 8534.4],
    ["28 1/2 ft", 8686.8],
    [`28' 6"`, 8686.8],
    ["28’ 6”", 8686.8],
    ["28′6″", 8686.8],
    [`28'-6"`, 8686.8],
    ["28 ft 6 in", 8686.8],
    ["28' 6", 8686.8],
    [`28' 6 1/2"`, 8699.5],
    ["28′ 6½″", 8699.5],
    [`-28' 6"`, -8686.8],
    ["½ in", 12.7],
    ["19⅜ in", 492.125],
    ["1⁄8 in", 3.175],
    ["28\u00a0ft", 8534.4],
    ["  7.5\u202fmm ", 7.5],
    ["−7.5 mm", -7.5],
    ["–3/8 in", -9.525],
    ["- 5 mm", -5],
    ["+5 mm", 5],
    [".5 mm", 0.5],
    [",5 mm", 0.5],
    ["5. mm", 5],
  ])("%s is %d mm, whatever the unit shown", (text, expected) => {
    for (const bare of ["mm", "in", "ft"] as const)
      expect(mmOf(text, bare)).toBeCloseTo(expected, 9);
  });

  it.each([
    ["7.5", 7.5, 190.5, 2286],
    ["7,5", 7.5, 190.5, 2286],
    ["5/16", 0.3125, 7.9375, 95.25],
    ["28 1/2", 28.5, 723.9, 8686.8],
    ["¼", 0.25, 6.35, 76.2],
  ])("%s, bare, is in the unit shown", (text, inMm, inInches, inFeet) => {
    expect(mmOf(text, "mm")).toBeCloseTo(inMm, 9);
    expect(mmOf(text, "in")).toBeCloseTo(inInches, 9);
    expect(mmOf(text, "ft")).toBeCloseTo(inFeet, 9);
  });

  it("has no minus zero", () => {
    for (const text of ["-0", `-0' 0"`]) expect(Object.is(mmOf(text), 0)).toBe(true);
  });

  it.each([
    ["", "There is no number here."],
    [" \u00a0 ", "There is no number here."],
    ["mm", "There is no number here."],
    ["-", "There is no number here."],
    ["1,234", "1,234 can be read two ways: write 1.234 or 1234."],
    ["1,234.5", "Write one number with one decimal mark and nothing between its digits."],
    ["1.2.3", "Write one number with one decimal mark and nothing between its digits."],
    ["1 234", "Write one number with one decimal mark and nothing between its digits."],
    ["7.5 kg", "“kg” is not a unit read here: use mm, cm, in or ft."],
    ["7 m", "“m” is not a unit read here: use mm, cm, in or ft."],
    ["1/0", "A fraction cannot be over 0."],
    ["19 11/8", "After a whole number the fraction must be less than one; 11/8 is not."],
    ["7.5 1/2", "“7.5 1/2” is not a number."],
    [`28' 13"`, "After feet there must be less than 12 inches."],
    ["NaN", "“nan” is not a number."],
    ["Infinity", "“infinity” is not a number."],
    ["1e999", "“1e999” is not a number."],
    ["0x10", "“0x10” is not a number."],
    ["9".repeat(400), "This is too long to be a number."],
  ])("refuses “%s” and says why", (text, why) => {
    expect(whyNot(text)).toBe(why);
  });

  it("reads three digits after a comma where no thousand can be meant", () => {
    expect(mmOf("0,125 in")).toBeCloseTo(3.175, 12);
    expect(mmOf("1234,125")).toBe(1234.125);
  });

  it("gives a finite number or a reason for any text whatever", () => {
    const bits = fc.constantFrom(..."0123456789.,/-' \"½″−", "mm", "in", "ft", "e9");
    const text = fc.oneof(
      fc.string(),
      fc.array(bits, { maxLength: 12 }).map((all) => all.join("")),
    );
    fc.assert(
      fc.property(text, fc.constantFrom("mm", "in", "ft"), (typed, bare) => {
        const parsed = parseLength(typed, bare);
        if (parsed.ok) expect(Number.isFinite(parsed.mm)).toBe(true);
        else expect(parsed.why).toMatch(/\.$/);
      }),
      { numRuns: 2000 },
    );
  });
});

describe("showing a length", () => {
  it.each<[number, LengthStyle, string]>([
    [7.5, { unit: "mm", decimals: 2 }, "7.5 mm"],
    [492, { unit: "mm", decimals: 2 }, "492 mm"],
    [100, { unit: "mm", decimals: 0 }, "100 mm"],
    [8, { unit: "mm", decimals: 1, fixed: true }, "8.0 mm"],
    [-0.04, { unit: "mm", decimals: 1, fixed: true }, "0.0 mm"],
    [-7.55, { unit: "mm", decimals: 2 }, "−7.55 mm"],
    [645.16, { unit: "in", decimals: 3 }, "25.4 in"],
    [492.125, { unit: "in", fraction: 64 }, "19 3/8 in"],
    [-9.525, { unit: "in", fraction: 64 }, "−3/8 in"],
    [25.3, { unit: "in", fraction: 64 }, "1 in"],
    [0.1, { unit: "in", fraction: 64 }, "0 in"],
    [-0.1, { unit: "in", fraction: 64 }, "0 in"],
    [8534.4, { unit: "ft", decimals: 2 }, "28 ft"],
    [8686.8, { unit: "ft", decimals: 2 }, "28.5 ft"],
  ])("%d mm as %j is %s", (mm, style, expected) => {
    expect(formatLength(mm, style)).toBe(expected);
  });

  it("gives the nearest 64th in lowest terms", () => {
    // 19/64 in = 7.540625 mm and 1/64 in = 0.396875 mm, exactly.
    expect(nearest64(7.540625)).toBe("19/64 in");
    expect(nearest64(7.540625 + 0.198)).toBe("19/64 in");
    expect(nearest64(7.540625 + 0.199)).toBe("5/16 in");
    expect(nearest64(12.7)).toBe("1/2 in");
  });

  it("is read back to within half of what it resolves", () => {
    fc.assert(
      fc.property(anyLength, anyStyle, (mm, [style, resolution]) => {
        const back = mmOf(formatLength(mm, style), "mm");
        expect(Math.abs(back - mm)).toBeLessThanOrEqual(resolution / 2 + 1e-9);
      }),
    );
  });

  it("is the same once read back, with its unit or bare", () => {
    fc.assert(
      fc.property(anyLength, anyStyle, (mm, [style]) => {
        const figure = lengthFigure(mm, style);
        expect(lengthFigure(mmOf(figure, style.unit), style)).toBe(figure);
        expect(mmOf(formatLength(mm, style), "mm")).toBe(mmOf(figure, style.unit));
      }),
    );
  });
});

describe("showing a limit", () => {
  it("rounds inward: 8.64 mm at least is 8.7, 8.64 mm at most is 8.6", () => {
    const tenths = { unit: "mm", decimals: 1 } as const;
    expect(formatLength(shownAtLeast(8.64, tenths), tenths)).toBe("8.7 mm");
    expect(formatLength(shownAtMost(8.64, tenths), tenths)).toBe("8.6 mm");
    expect(formatLength(shownAtLeast(8.6, tenths), tenths)).toBe("8.6 mm");
    expect(nearest64(shownAtLeast(7.6, { unit: "in", fraction: 64 }))).toBe("5/16 in");
  });

  it("gives, typed back, a length within the limit and not a whole step inside it", () => {
    fc.assert(
      fc.property(anyLength, anyStyle, (mm, [style, resolution]) => {
        const least = mmOf(formatLength(shownAtLeast(mm, style), style));
        const most = mmOf(formatLength(shownAtMost(mm, style), style));
        expect(least).toBeGreaterThanOrEqual(mm);
        expect(least - mm).toBeLessThan(resolution + 1e-9);
        expect(most).toBeLessThanOrEqual(mm);
        expect(mm - most).toBeLessThan(resolution + 1e-9);
      }),
      { numRuns: 1000 },
    );
  });
});

it.each([
  ["9'000", "9'000 can be read two ways: write 9000, or 9 ft."],
  ["1'000.5 mm", "1'000 can be read two ways: write 1000, or 1 ft."],
  ["--5", "Write one sign before the number."],
  ["-+5 mm", "Write one sign before the number."],
])("refuses %s, and says what to write", (text, why) => {
  expect(parseLength(text, "mm")).toEqual({ ok: false, why });
});

it("does not see what cannot be seen", () => {
  expect(parseLength("\u200b7.5\u00ad mm\ufeff", "in")).toEqual({ ok: true, mm: 7.5 });
});
