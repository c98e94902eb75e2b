import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";
import { sizes } from "./layout-screen.ts";
import { test } from "./page.ts";
import { files, instruments, namesOn, openShelf, pick, row, shelfFile } from "./shelf-screen.ts";

for (const viewport of sizes.slice(0, 3)) {
  const size = `${viewport.width}x${viewport.height}`;
  for (const colorScheme of ["light", "dark"] as const) {
    test(`the shelf at ${size}, ${colorScheme}: axe finds nothing, nothing runs off, all can be touched`, async ({
      page,
    }) => {
      await page.setViewportSize(viewport);
      await page.emulateMedia({ colorScheme });
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
      await pick(
        page,
        shelfFile({ id: "1", name: "Another", length: 470 }, { id: "2", name: "B" }),
      );
      await expect(
        page.getByText("instruments are on the shelf already, and differ"),
      ).toBeVisible();
      await expectGood(page);
    });
  }
}

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
  const { violations } = await new AxeBuilder({ page }).analyze();
  const found = violations.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)]);
  expect(found).toEqual([]);
  const { overflow, small } = await page.evaluate(() => ({
    overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    small: [...document.querySelectorAll("main :is(button, select, input, .button)")]
      .filter((element) => !element.matches(".unseen"))
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
      .map(({ element, box }) => `${element.outerHTML.slice(0, 90)} ${box.width}x${box.height}`),
  }));
  expect(overflow).toBe(0);
  expect(small).toEqual([]);
}
