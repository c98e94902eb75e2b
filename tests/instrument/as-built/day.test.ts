import { expect, test } from "vitest";
import { firstDay, isDay, lastDay } from "../../../src/instrument/as-built/day.ts";

test.each([firstDay, "2026-05-14", "2024-02-29", lastDay])("%s is a day", (text) => {
  expect(isDay(text)).toBe(true);
});

test.each(["", "0026-05-31", "0999-10-11", "20266-11-25", "112520266", "1899-12-31", "2201-01-01"])(
  "“%s” is none",
  (text) => {
    expect(isDay(text)).toBe(false);
  },
);

test.each(["2026-02-29", "2026-02-31", "2026-13-01", "2026-00-10", "2026-04-31", "2026-5-14"])(
  "%s is in no calendar",
  (text) => {
    expect(isDay(text)).toBe(false);
  },
);
