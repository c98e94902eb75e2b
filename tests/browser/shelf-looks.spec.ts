import { expect, type Page } from "@playwright/test";
import { expectNoViolationAtAnySize, tooSmallToTouch } from "./any-size.ts";
import { sizes } from "./layout-screen.ts";
import { test } from "./page.ts";
import { files, instruments, namesOn, openShelf, pick, row, shelfFile } from "./shelf-screen.ts";

test("the shelf at any size, light or dark: axe finds nothing, nothing runs off, all can be touched", async ({
  page,
}) => {
  test.slow();
  await openShelf(page);
  await expectGood(page);
  await pick(page, shelfFile(...twelve));
  await expect(instruments(page)).toContainText("12 instruments");
  await row(page, "No. 3").scrollIntoViewIfNeeded();
  await expect(row(page, "No. 3").locator("svg")).toBeVisible();
  await row(page, "No. 3").getByRole("button", { name: "More for No. 3" }).click();
  await page.getByRole("button", { name: "Rename", exact: true }).click();
  await page.getByRole("button", { name: "Share", exact: true }).click();
  await expectGood(page);
  await page.getByRole("button", { name: "Take off the shelf" }).click();
  await pick(page, shelfFile({ id: "1", name: "Another", length: 470 }, { id: "2", name: "B" }));
  await expect(page.getByText("instruments are on the shelf already, and differ")).toBeVisible();
  await expectGood(page);
});

test("a shelf of 5 000 shows its latest twenty-five, each with its section once it is in sight", async ({
  page,
}) => {
  await openShelf(page);
  const many = Array.from({ length: 5000 }, (_, i) => ({ id: `m${i}`, name: `No. ${i}` }));
  await pick(page, shelfFile(...many));
  await expect(files(page)).toContainText("5000 imported.", { timeout: 90_000 });
  await page.reload();
  await expect(instruments(page)).toContainText("5000 instruments");
  expect(await namesOn(page)).toHaveLength(25);
  await page.getByRole("button", { name: "Show 25 more" }).click();
  expect(await namesOn(page)).toHaveLength(50);
  await page.getByLabel("Find").fill("no. 4321");
  await expect(row(page, "No. 4321").locator("svg")).toBeVisible();
});

const twelve = Array.from({ length: 12 }, (_, i) => ({
  id: `${i}`,
  name: i === 5 ? "שולחן 5 with a name as long as a builder in no hurry may type it" : `No. ${i}`,
  length: 480 + i,
}));

async function expectGood(page: Page): Promise<void> {
  await expectNoViolationAtAnySize(page);
  for (const size of sizes) {
    await page.setViewportSize(size);
    await expect.poll(() => tooSmallToTouch(page), `too small at ${size.width}`).toEqual([]);
  }
}
