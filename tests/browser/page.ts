import { test as base, expect } from "@playwright/test";
import { watch } from "./watch.ts";

/** Playwright's `test`, failed by any fault that `watch` sees on the way. */
export const test = base.extend({
  page: async ({ context, page, baseURL }, use) => {
    const faults = await watch(context, new URL(baseURL ?? "").origin);
    await use(page);
    expect(faults, "faults seen while the page ran").toEqual([]);
  },
});
