import { describe, expect, it } from "vitest";
import {
  count,
  deg,
  mm,
  phrase,
  roundedDown,
  roundedUp,
  sayPhrase,
} from "../../src/instrument/phrase.ts";

describe("a phrase", () => {
  const overrun = phrase`The flat runs ${mm(52.03)} past the break, ${mm(0.052)} deep`;

  it("keeps words and quantities apart, in order", () => {
    expect(overrun).toEqual([
      "The flat runs ",
      { value: 52.03, as: "length" },
      " past the break, ",
      { value: 0.052, as: "length" },
      " deep",
    ]);
  });

  it("is said in the reader's units, each length as finely as it is worth", () => {
    expect(sayPhrase(overrun, "mm")).toBe("The flat runs 52 mm past the break, 0.05 mm deep");
    expect(sayPhrase(overrun, "in")).toBe("The flat runs 2.048 in past the break, 0.002 in deep");
    expect(sayPhrase(overrun, "in-fraction")).toBe(
      "The flat runs 2 3/64 in past the break, 0.002 in deep",
    );
  });

  it("says radii in feet, angles to a hundredth or a tenth, and counts whole", () => {
    const all = phrase`${mm(8534.4)}, ${deg(1.3766)}, ${deg(24.712)}, ${count(14)}`;
    expect(sayPhrase(all, "in-fraction")).toBe("28 ft, 1.38°, 24.7°, 14");
    expect(sayPhrase(all, "mm")).toBe("8534 mm (28 ft), 1.38°, 24.7°, 14");
  });

  it("rounds a limit inward, so that the number said is within it", () => {
    const limits = phrase`${roundedUp(mm(8.64))} or more, ${roundedDown(mm(8.66))} or less`;
    expect(sayPhrase(limits, "mm")).toBe("8.7 mm or more, 8.6 mm or less");
    expect(sayPhrase(limits, "in-fraction")).toBe("11/32 in or more, 21/64 in or less");
    expect(sayPhrase([roundedUp(deg(1.371)), " to ", roundedDown(deg(12.38))], "mm")).toBe(
      "1.38° to 12.3°",
    );
  });
});
