import { renderHook } from "@testing-library/react";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { useBraces } from "../../src/views/fields/braces.tsx";
import {
  ShopContext,
  useEdit,
  useGiven,
  useRimwright,
  useShelfSlot,
} from "../../src/views/store-context.ts";

// React reports every fault it meets, the expected ones too.
beforeEach(() => {
  vi.spyOn(console, "error").mockImplementation(() => {});
});
afterEach(() => {
  vi.restoreAllMocks();
});

const asked: readonly (readonly [string, () => unknown])[] = [
  ["the document", () => useRimwright(({ instrument }) => instrument)],
  ["edits", () => useEdit()],
  ["the shelf", () => useShelfSlot()],
  ["the shop", () => useGiven(ShopContext)],
  ["braces", () => useBraces("Top")],
];

test.each(asked)("%s asked for outside the page throws", (_, ask) => {
  expect(() => renderHook(ask)).toThrow("outside the page");
});
