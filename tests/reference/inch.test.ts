import { describe, expect, it } from "vitest";
import { formatLength, parseLength } from "../../src/instrument/length.ts";

/*
 * 1 in = 25.4 mm exactly: the international yard and pound agreement of 1959. A foot is 12 in, a yard 36 in or 914.4 mm.
 */
describe("an inch", () => {
  it.each([
    ["1 in", 25.4],
    ["1 ft", 304.8],
    ["3 ft", 914.4],
    ["36 in", 914.4],
    ['25.4"', 645.16],
    ["1/64 in", 0.396875],
  ])("%s is %d mm to the last bit or one off", (text, mm) => {
    const parsed = parseLength(text, "mm");
    const doubles = 2 ** -52 * mm;
    expect(parsed.ok && Math.abs(parsed.mm - mm)).toBeLessThanOrEqual(doubles);
  });

  it("is shown as one inch, and a yard as three feet", () => {
    expect(formatLength(25.4, { unit: "in", decimals: 4 })).toBe("1 in");
    expect(formatLength(914.4, { unit: "ft", decimals: 4 })).toBe("3 ft");
  });
});
