import { describe, expect, it } from "vitest";
import { formatAngle, parseAngle } from "../../src/instrument/written-number.ts";

describe("an angle", () => {
  it.each(["1.2", "1,2", "1.2°", "1.2 °", "1.2 deg", "1.2 degrees", " 1.2º"])(
    "is read from “%s”",
    (text) => {
      expect(parseAngle(text)).toEqual({ ok: true, value: 1.2 });
    },
  );

  it("may be negative, written with any minus", () => {
    for (const text of ["-0.5", "−0.5°"])
      expect(parseAngle(text)).toEqual({ ok: true, value: -0.5 });
  });

  it.each(["", "°", "1.2 rad", "1.2.3", "NaN"])("is not read from “%s”", (text) => {
    expect(parseAngle(text).ok).toBe(false);
  });

  it("is shown in degrees, without idle zeros unless they are asked for", () => {
    expect(formatAngle(1.4, 2)).toBe("1.4°");
    expect(formatAngle(1.4, 2, true)).toBe("1.40°");
    expect(formatAngle(-0.25, 1)).toBe("−0.3°");
    expect(formatAngle(-0.001, 2)).toBe("0°");
  });
});
