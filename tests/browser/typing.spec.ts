import { expect } from "@playwright/test";
import { field, shownOutcome, shownShim, unfoldAll } from "./layout-screen.ts";
import { test } from "./page.ts";

test("a builder types an orchestra-size body with a 28 ft dome and reads the shim", async ({
  page,
}) => {
  await page.goto("/");
  await unfoldAll(page);
  await field(page, "Body length").fill("490");
  await field(page, "Dish radius").fill("28 ft");
  await field(page, "Brace radius").fill("28'");
  await field(page, "Break from the neck end").fill("100");
  await field(page, "Scale length").fill("645");
  await field(page, "Fingerboard thickness").fill("6");
  await field(page, "Bridge thickness").fill("9");
  await page.getByRole("radio", { name: "Pitch" }).check();
  await field(page, "Pitch").fill("1,25");

  // Common practice, no source: a shim of some 7 to 8 mm gives a pitch a little over 1 deg, the fret
  // plane within about 1 mm of the bridge's top, and strings near half an inch over the top.
  expect(await shownShim(page)).toBeGreaterThan(6.5);
  expect(await shownShim(page)).toBeLessThan(8.5);
  expect(await shownOutcome(page, "Pitch")).toBe(1.25);
  expect(Math.abs(await shownOutcome(page, "Fret plane over the bridge"))).toBeLessThan(1.2);
  expect(await shownOutcome(page, "String height")).toBeGreaterThan(11);
  expect(await shownOutcome(page, "String height")).toBeLessThan(13.5);
});

// Exact, by hand: without a dome the rim is a plane tilted by the pitch about the break, so the shim is
// (body length − flat − contact) · tan(pitch).
test("without a dome the shim is the tilted plane's, in whatever unit the lengths are typed", async ({
  page,
}) => {
  await page.goto("/");
  await unfoldAll(page);
  await page.getByRole("checkbox", { name: "Dish radius: none" }).check();
  await page.getByRole("radio", { name: "Pitch" }).check();
  await field(page, "Pitch").fill("1.5");
  await field(page, "Body length").fill("19 3/8 in");
  await field(page, "Break from the neck end").fill('4"');
  await field(page, "Stick's width under the rim").fill("18 mm");
  const reach = 25.4 * 19.375 - 25.4 * 4 - 18;
  expect(await shownShim(page)).toBeCloseTo(reach * Math.tan((1.5 * Math.PI) / 180), 1);
});

test("each change moves the shim the way it must", async ({ page }) => {
  await page.goto("/");
  const before = await shownShim(page);

  await field(page, "Dish radius").fill("20 ft");
  const rounder = await shownShim(page);
  expect(rounder).not.toBe(before);

  await field(page, "Dish radius").fill("28 ft");
  expect(await shownShim(page)).toBe(before);

  await field(page, "Saddle exposed").fill("4.5");
  const higher = await shownShim(page);
  expect(higher).toBeGreaterThan(before);
});

test("choosing another target moves nothing until its value is changed", async ({ page }) => {
  await page.goto("/");
  const before = await shownShim(page);
  const targets = page.getByRole("group", { name: /find the shim/i }).getByRole("radio");
  expect(await targets.count()).toBe(5);
  for (const target of await targets.all()) {
    await target.check();
    expect(await shownShim(page)).toBe(before);
  }
});

test("units change what is shown, and nothing else", async ({ page }) => {
  await page.goto("/");
  await unfoldAll(page);
  const before = await shownShim(page);
  await field(page, "Body length").fill("508");
  const after = await shownShim(page);
  expect(after).not.toBe(before);
  await page.getByRole("button", { name: "Inches, decimal" }).click();
  expect(await shownShim(page)).toBe(after);
  await expect(field(page, "Lower bout width")).toHaveValue(/^15\.15/);
  await page.getByRole("button", { name: "Millimetres" }).click();
  await expect(field(page, "Lower bout width")).toHaveValue("385");
  expect(await shownShim(page)).toBe(after);
});
