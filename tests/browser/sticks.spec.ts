import { readFile, writeFile } from "node:fs/promises";
import { expect, type Page } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { expectNoViolationAtAnySize, tooSmallToTouch } from "./any-size.ts";
import { test } from "./page.ts";
import { readPdf } from "./pdf-lines.ts";
import { openShelf, shelfFile } from "./shelf-screen.ts";

const table = (page: Page) => page.getByRole("region", { name: "Table of instruments" });
const entry = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });

async function openSticks(page: Page): Promise<void> {
  await page.goto("./#/sticks");
  await expect(page.getByRole("heading", { name: /^The fewest for all/ })).toBeVisible();
}

/** What the pages say as they print, without spaces. */
const printed = async (page: Page): Promise<readonly string[]> =>
  readPdf(await page.pdf({ preferCSSPageSize: true })).map(({ text }) => text);

/** A hundred and fifty invented instruments of three models. */
const sizes = [
  ["Small", 460],
  ["Middle", 495],
  ["Jumbo", 530],
] as const;
const shop = Array.from({ length: 150 }, (_, i) => {
  const [model, length] = sizes[i % 3] ?? sizes[0];
  return { id: `made-${i}`, name: `${model} ${i + 1}`, length: length + (i % 7) };
});

test("a master's afternoon: a shop of 150 comes in, the jumbos are ticked, a stick is dragged, printed and saved", async ({
  page,
}, info) => {
  const path = info.outputPath("shop.json");
  await writeFile(path, shelfFile(...shop));
  await openShelf(page);
  await page.getByLabel("Import a file").setInputFiles(path);
  await expect(page.getByText("150 imported")).toBeVisible();

  await openSticks(page);
  await expect(page.getByText(/^157 instruments, 157 ticked/)).toBeVisible();
  await page.getByLabel("Find").fill("jumbo");
  await page.getByRole("button", { name: "Tick only these 51" }).click();
  await expect(page.getByText(/51 ticked\.$/)).toBeVisible();

  const first = () => table(page).getByRole("row").nth(1).textContent();
  const slider = page.getByRole("slider", { name: "Thickness, to drag" });
  const before = await first();
  await slider.fill("8.5");
  await expect(entry(page, "Thickness")).toHaveValue("8.5");
  expect(await first()).not.toBe(before);
  await page.getByRole("button", { name: "Add it to my sticks" }).click();
  await entry(page, "Name of stick 1").fill("Beech");

  const saved = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as CSV" }).click();
  const rows = parse(await readFile(await (await saved).path(), "utf8"), {
    columns: true,
    bom: true,
  }) as readonly Record<string, string>[];
  expect(rows).toHaveLength(51);
  for (const row of rows) expect(row["Instrument"]?.toLowerCase()).toContain("jumbo");

  const pages = await printed(page);
  expect(pages).toHaveLength(1);
  expect(pages[0]).toContain("Astickof8.50mm");
  expect(pages[0]?.match(/Jumbo\d+/g)).toHaveLength(25);

  // The shop's sticks come back with the next visit, and one undo takes the name back.
  await page.reload();
  await expect(entry(page, "Name of stick 1")).toHaveValue("Beech");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(entry(page, "Name of stick 1")).toHaveValue("");
  await page.keyboard.press("Control+y");
  await expect(entry(page, "Name of stick 1")).toHaveValue("Beech");
});

test("the sheets of all ticked print in one run, a page each", async ({ page }) => {
  await openSticks(page);
  await page.getByRole("button", { name: "Sheets of all ticked" }).click();
  await expect(page.getByRole("article", { name: "Profile sheet" })).toHaveCount(7);
  await expect(page.getByRole("img", { name: "Code that opens this instrument" })).toHaveCount(7);
  const pages = await printed(page);
  expect(pages).toHaveLength(7);
  for (const text of pages) expect(text).toContain("Profilesheet");
});

test("one shim for the shop: who limits it, and what to change for the stick tried", async ({
  page,
}) => {
  await openSticks(page);
  const shared = page.getByRole("region", { name: "One shim for the shop" });
  const verdict = shared.getByRole("status");
  await expect(verdict).toContainText("No one shim serves them all");
  await expect(verdict).toContainText("Jumbo size needs no less than 9.03 mm");
  for (const name of ["Three-quarter size", "Parlour size, 12 frets to the body"])
    await table(page).getByLabel(name).uncheck();
  await expect(verdict).toContainText("serves them all");
  await expect(verdict).toContainText("Orchestra size");
  await table(page).getByLabel("Three-quarter size").check();
  await entry(page, "Thickness").fill("10");
  await expect(shared).toContainText(
    /Three-quarter size: (bridge|fingerboard) thickness [\d.]+ mm (more|less) \([\d.]+ mm\), or/,
  );
});

test("is sound at every size, both sides of the table, and nothing is too small for a finger", async ({
  page,
}) => {
  await openSticks(page);
  await page.getByRole("button", { name: "Add it to my sticks" }).click();
  await expectNoViolationAtAnySize(page);
  await page.getByRole("button", { name: "what each wants" }).click();
  await expectNoViolationAtAnySize(page);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await tooSmallToTouch(page)).toEqual([]);
});
