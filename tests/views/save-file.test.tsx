import { expect, test } from "vitest";
import { fileName } from "../../src/views/save-file.ts";

test("a file is named after its instrument, in any script", () => {
  expect(fileName("Orchestra size", "side-pattern", "dxf")).toBe("orchestra-size-side-pattern.dxf");
  expect(fileName("試作ギター 二号", "side-pattern", "svg")).toBe(
    "試作ギター-二号-side-pattern.svg",
  );
  expect(fileName("", "sections", "svg")).toBe("instrument-sections.svg");
});

// The signs Windows and POSIX forbid in a name, and the 255 bytes Linux's file systems allow one (from memory).
test("no name is one that a file system refuses", () => {
  for (const name of [
    'a/b\\c:d*e?f"g<h>i|j\u0000k\nl',
    "../../..",
    "…",
    "𝄞".repeat(200),
    "試".repeat(200),
  ]) {
    const made = fileName(name, "half-outline", "svg");
    expect(made).not.toMatch(/[\\/:*?"<>|\p{Cc}]|^\./u);
    expect(new TextEncoder().encode(made).length).toBeLessThan(256);
    expect(made.isWellFormed()).toBe(true);
  }
});
