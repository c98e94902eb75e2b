import { expect } from "@playwright/test";
import { expectDrawn, shownOutcome, shownShim, verdict } from "./layout-screen.ts";
import { test } from "./page.ts";

test("a first visit shows the verdict and the section of an instrument that says it is invented", async ({
  page,
}) => {
  await page.goto("/");
  await expect(verdict(page)).toBeVisible();
  await expectDrawn(page);
  expect(await shownShim(page)).toBeGreaterThan(0);
  await expect(page.getByRole("textbox", { name: "Notes" })).toHaveValue(/invented/i);
});

// Ranges: common practice, no source, except fret plane over the bridge (up to 1/16 in) and string
// height (about 1/2 in), from buildyourguitar.com/resources/tips/aangle.htm.
test("what a first visit shows lies where builders of domed tops expect it", async ({ page }) => {
  await page.goto("/");
  for (const [name, low, high] of [
    ["Pitch", 1, 2],
    ["Fret plane over the bridge", 0, 1.6],
    ["String height", 11, 14],
    ["Break angle", 20, 35],
  ] as const) {
    const shown = await shownOutcome(page, name);
    expect(shown, name).toBeGreaterThanOrEqual(low);
    expect(shown, name).toBeLessThanOrEqual(high);
  }
});
