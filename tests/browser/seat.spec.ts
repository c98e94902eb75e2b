import { expect, type Page } from "@playwright/test";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { field, handleOf, shownShim } from "./layout-screen.ts";
import { test } from "./page.ts";
import { readPdf } from "./pdf-lines.ts";
import { savingWord } from "./shelf-screen.ts";

const spacer = (page: Page) => page.getByRole("region", { name: "Spacer", exact: true });
const way = (page: Page, name: string) => page.getByRole("radio", { name, exact: true });

test("a builder plans a seat sanded on the top, and finds it on every view", async ({ page }) => {
  await page.goto("/");
  const shim = await shownShim(page);
  await way(page, "Seat sanded on the top").check();
  await expect(spacer(page)).toContainText("1.7");
  await expect(field(page, "Break from the neck end")).toHaveCount(0);

  // Under bar and spacer the spacer is moved, and becomes what is aimed for.
  await page.getByRole("button", { name: "Turn over" }).click();
  await expect(page.getByRole("img", { name: /^The top under bar and spacer/ })).toBeVisible();
  await handleOf(page, "Spacer").focus();
  for (let press = 0; press < 3; press++) await page.keyboard.press("ArrowUp");
  await expect(way(page, "Spacer itself, as stated")).toBeChecked();
  await expect(spacer(page)).toContainText("2.0");
  await expect(savingWord(page)).toHaveText("saved");

  await page.reload();
  await expect(spacer(page)).toContainText("2.0");
  await page.goto("./#/rim");
  await expect(page.getByRole("table").first()).toContainText("neck end");
  await expect(page.getByRole("table").first()).not.toContainText("break");
  await page.goto("./#/sheet");
  await expect(page.locator(".sheet").getByRole("region", { name: "Spacer" })).toContainText("2.0");
  await page.goto("./#/bench");
  await page.getByRole("button", { name: /Set bar and spacer/ }).click();
  await expect(page.getByRole("article")).toContainText("Make a spacer 2 mm thick");

  await page.goto("./#/compare");
  await page.getByRole("button", { name: "Use this way" }).click();
  await page.goto("./#/layout");
  await expect(page.getByRole("region", { name: "Shim", exact: true })).toBeVisible();
  await way(page, "Seat sanded on the top").check();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByRole("region", { name: "Shim", exact: true })).toBeVisible();
  expect(await shownShim(page)).toBeGreaterThan(shim);
});

test("a plate too thin for the seat is told, with what would do", async ({ page }) => {
  await page.goto("/");
  await way(page, "Seat sanded on the top").check();
  await page.getByRole("button", { name: "Seat on the top" }).click();
  await field(page, "Top thickness at the seat").fill("2.3");
  const checks = page.getByRole("region", { name: "Checks" });
  await expect(checks).toContainText("of the plate over the upper transverse brace");
  await field(page, "Top thickness at the seat").fill("0.5");
  await expect(checks).toContainText("it cuts through");
});

test("why the part decides is told on the builder's own numbers, and prints on one page", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("link", { name: "Why" }).click();
  await expect(page.getByRole("heading", { name: "Why the shim decides" })).toBeVisible();
  await expect(page.getByRole("img")).toHaveCount(5);
  for (const format of ["A4", "Letter"] as const)
    expect((await readPdf(await page.pdf({ format }))).length, format).toBe(1);
  await expectNoViolationAtAnySize(page);
});

test("axe finds nothing with a seat on Layout and in Compare, at any size, light or dark", async ({
  page,
}) => {
  test.slow();
  await page.goto("/");
  await way(page, "Seat sanded on the top").check();
  await page.getByRole("button", { name: "Seat on the top" }).click();
  await expectNoViolationAtAnySize(page);
  await page.goto("./#/compare");
  const ways = page.getByRole("region", { name: "Two ways to a flat seat" });
  await expect(ways).toBeVisible();
  const cutOff = await ways
    .getByRole("table")
    .evaluate(({ scrollWidth, parentElement }) => scrollWidth - (parentElement?.clientWidth ?? 0));
  expect(cutOff, "px of the table beyond its room").toBeLessThanOrEqual(0);
  await expectNoViolationAtAnySize(page);
});
