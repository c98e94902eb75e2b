import { fileURLToPath } from "node:url";
import { expect } from "@playwright/test";
import { firstLoad } from "../bench/script-size.ts";
import { expectDrawn, field, shownOutcome, shownShim, sizes, verdict } from "./layout-screen.ts";
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

for (const viewport of sizes)
  test(`nothing moves once it is drawn, at ${viewport.width}x${viewport.height}: a first tap falls where it was aimed`, async ({
    page,
  }) => {
    await page.setViewportSize(viewport);
    await page.addInitScript(() => {
      const moved: string[] = [];
      Object.assign(window, { moved });
      const watch = new PerformanceObserver((list) => {
        // The body itself moves as the page takes the place of the sentence that it has not started.
        for (const { sources } of list.getEntries() as (PerformanceEntry & {
          sources: { node: Element | null; currentRect: DOMRect; previousRect: DOMRect }[];
        })[])
          for (const { node, currentRect: now, previousRect: before } of sources)
            if (node !== document.body && Math.hypot(now.x - before.x, now.y - before.y) > 6)
              moved.push(`${node?.className}: ${before.x}, ${before.y} to ${now.x}, ${now.y}`);
      });
      watch.observe({ type: "layout-shift", buffered: true });
    });
    await page.goto("/");
    await expect(page.getByRole("region", { name: "To begin with" })).toBeVisible();
    await expect(page.getByRole("button", { name: "Save", exact: true })).toBeVisible();
    await page.waitForLoadState("networkidle");
    expect(await page.evaluate(() => (window as unknown as { moved: string[] }).moved)).toEqual([]);
  });

test("a first visit's script and styles are small enough for a slow line", async () => {
  const { script, style } = await firstLoad(fileURLToPath(new URL("../../dist", import.meta.url)));
  // Bytes, gzipped. Code that only late parts use belongs in files of its own: see “Code that comes late” in DEVELOPERS.md.
  expect(script).toBeLessThanOrEqual(122_000);
  expect(style).toBeLessThanOrEqual(5_000);
  // What is read is the page's: nothing of it may be missed by a change of the build.
  expect(script).toBeGreaterThan(100_000);
  expect(style).toBeGreaterThan(3_000);
});

test("it asks for body, dish and target, draws each answer at once, and asks never again", async ({
  page,
}) => {
  await page.goto("/");
  const asked = page.getByRole("region", { name: "To begin with" });
  await expect(asked.getByRole("combobox")).toHaveCount(3);
  const before = await shownShim(page);
  await asked.getByLabel("Which body?").selectOption({ label: "Dreadnought size" });
  await expect(field(page, "Body length")).toHaveValue("508");
  await asked.getByLabel("Which dish?").selectOption("7620 mm (25 ft)");
  await expect(field(page, "Dish radius")).toHaveValue("7620");
  expect(await shownShim(page)).not.toBe(before);
  await asked.getByLabel("What do you want to set?").selectOption("Pitch");
  await expect(field(page, "Pitch")).toBeVisible();
  await asked.getByRole("button", { name: "Done" }).click();
  await expect(asked).toHaveCount(0);
  await page.reload();
  await expectDrawn(page);
  await expect(asked).toHaveCount(0);
});

test("its questions can be passed over: by pressing Done at once, or by working on", async ({
  page,
}) => {
  await page.goto("/");
  const asked = page.getByRole("region", { name: "To begin with" });
  await asked.getByRole("button", { name: "Done" }).click();
  await page.reload();
  await expectDrawn(page);
  await expect(asked).toHaveCount(0);
  await page.evaluate(() => {
    localStorage.clear();
    sessionStorage.clear();
    Storage.prototype.setItem = () => {};
  });
  await page.reload();
  await expect(asked).toBeVisible();
  await field(page, "Body length").fill("490");
  // Stored a moment after.
  await expect.poll(() => page.evaluate(() => localStorage.getItem("rimwright"))).not.toBeNull();
  await page.reload();
  await expectDrawn(page);
  await expect(asked).toHaveCount(0);
});

test("where inches are shown, an instrument to start from is round in inches", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("button", { name: "Inches in fractions, to 1/64" }).click();
  await page
    .getByRole("region", { name: "To begin with" })
    .getByLabel("Which body?")
    .selectOption({ label: "Jumbo size" });
  for (const [name, inches] of [
    ["Body length", /^\d+( [1357]\/8| [13]\/4| 1\/2)?$/],
    ["Break from the neck end", /^\d+( \d+\/16| [1357]\/8| [13]\/4| 1\/2)?$/],
  ] as const)
    await expect(field(page, name)).toHaveValue(inches);
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
