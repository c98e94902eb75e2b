import { expect } from "@playwright/test";
import { drawing, field, measurements, shownShim, sizes, unfoldAll } from "./layout-screen.ts";
import { test } from "./page.ts";

test("what changes most is in reach without scrolling, and the outline is folded under it", async ({
  page,
}) => {
  await page.goto("/");
  for (const name of [
    "Saddle exposed",
    "Body length",
    "Dish radius",
    "Break from the neck end",
    "Stick's width under the rim",
    "Bridge thickness",
    "Fingerboard thickness",
  ])
    await expect(field(page, name)).toBeInViewport({ ratio: 1 });
  await expect(field(page, "Lower bout width")).toHaveCount(0);
  await measurements(page).getByRole("button", { name: "Outline and sides" }).click();
  await expect(field(page, "Lower bout width")).toHaveCount(1);
});

test("a tap on a field selects what is in it, so that what is typed takes its place", async ({
  page,
}) => {
  await page.goto("/");
  const thickness = field(page, "Bridge thickness");
  await thickness.click({ position: { x: 60, y: 20 } });
  await page.keyboard.type("7,5");
  await expect(thickness).toHaveValue("7,5");
});

for (const [view, name, text] of [
  ["rim", "Stations every", "50"],
  ["compare", "Seed", "7"],
  ["compare", "Saddle exposed, base", "3,2"],
  ["bench", "Shim used", "8.1"],
] as const)
  test(`a tap selects what is in ${name} on ${view} too`, async ({ page }) => {
    await page.goto(`/#/${view}`);
    const entry = page.getByRole("textbox", { name, exact: true }).first();
    if (view === "bench") {
      await page.getByRole("button", { name: "Set the shim" }).click();
      await entry.fill("7.9");
      await page.getByRole("heading", { name: "Set the shim" }).click();
    }
    await entry.click();
    await page.keyboard.type(text);
    await expect(entry).toHaveValue(text);
  });

test("braces follow the dish until they are set apart", async ({ page }) => {
  await page.goto("/");
  await unfoldAll(page);
  await field(page, "Dish radius").fill("7620");
  await expect(field(page, "Brace radius")).toHaveValue("7620");
  await field(page, "Brace radius").fill("8000");
  await expect(page.getByText(/^Braces are set apart: 8000 mm/)).toBeVisible();
  await field(page, "Dish radius").fill("9144");
  await expect(field(page, "Brace radius")).toHaveValue("8000");
});

test("each target says when to choose it", async ({ page }) => {
  await page.goto("/");
  const said = new Set<string>();
  for (const target of await page.getByRole("radio").all()) {
    await target.check();
    said.add(
      (await measurements(page)
        .getByText(/^When /)
        .textContent()) ?? "",
    );
  }
  expect(said.size).toBe(5);
});

for (const size of sizes)
  test(`a tap fills the screen with the drawing and gives it back at ${size.width}`, async ({
    page,
  }) => {
    await page.setViewportSize(size);
    await page.goto("/");
    const shim = await shownShim(page);
    const before = (await drawing(page).boundingBox())?.height ?? 0;
    await page
      .getByRole("button", { name: "Fill the screen with the drawing" })
      .click({ position: { x: 40, y: 20 } });
    const height = async () => (await drawing(page).boundingBox())?.height ?? 0;
    await expect.poll(height).toBeGreaterThan(1.5 * before);
    await page.keyboard.press("Escape");
    await expect.poll(height).toBe(before);
    expect(await shownShim(page)).toBe(shim);
  });

test("on a phone what stands still takes at most two fifths of the height", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("/");
  await field(page, "Fingerboard thickness").focus();
  await expect(page.getByText(/^On the centreline, without frets/)).toBeVisible();
  const still = await page.evaluate(() =>
    [...document.querySelectorAll("body *")]
      .filter((element) => ["sticky", "fixed"].includes(getComputedStyle(element).position))
      .reduce((sum, element) => sum + element.getBoundingClientRect().height, 0),
  );
  expect(still).toBeGreaterThan(0);
  expect(still).toBeLessThanOrEqual(0.4 * 844);
});
