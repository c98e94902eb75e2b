import { readFile } from "node:fs/promises";
import { expect, type Locator, type Page } from "@playwright/test";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { sizes } from "./layout-screen.ts";
import { test } from "./page.ts";

const tablet = { width: 1180, height: 820 };

const panel = (page: Page, name: string): Locator => page.getByRole("region", { name });

const cell = (page: Page, name: string): Locator =>
  page.getByRole("textbox", { name, exact: true });

const row = (page: Page, name: string): Locator =>
  page.getByRole("row").filter({ has: page.getByRole("rowheader", { name, exact: true }) });

async function openCompare(page: Page, viewport = tablet): Promise<void> {
  await page.setViewportSize(viewport);
  await page.goto("/#/compare");
  await expect(page.getByRole("button", { name: "Add a variant" })).toBeVisible();
}

/** A rounder dish, a thicker bridge, and another pitch. */
async function makeThree(page: Page): Promise<void> {
  for (let i = 0; i < 3; i++) await page.getByRole("button", { name: "Add a variant" }).click();
  await page.getByLabel("Change", { exact: true }).selectOption({ label: "Dish radius" });
  await page.getByLabel("Change", { exact: true }).selectOption({ label: "Bridge thickness" });
  await cell(page, "Dish radius, Variant A").fill("20 ft");
  await cell(page, "Bridge thickness, Variant B").fill("9,5");
  await page.getByLabel("Aims for, Variant C").selectOption({ label: "Pitch" });
  await cell(page, "Pitch, Variant C").fill("1.6");
}

async function drawn(page: Page): Promise<void> {
  await expect(page.getByRole("region", { name: "How sure" }).getByRole("status")).toContainText(
    "drawn.",
    { timeout: 60_000 },
  );
}

test.setTimeout(120_000);

test("three variants stand side by side, edited live, each told against the base", async ({
  page,
}) => {
  await openCompare(page);
  await makeThree(page);
  const shims = row(page, "Shim").getByRole("cell");
  await expect(shims).toHaveCount(4);
  await expect(shims.nth(0)).toContainText("8.44 mm");
  await expect(shims.nth(2)).toContainText("+1.76 mm");
  await expect(row(page, "Saddle exposed").getByRole("cell").nth(1)).toContainText("within");
  await expect(row(page, "Pitch").getByRole("cell").nth(3)).toContainText("1.60°");

  // A base changed is a base for all.
  await cell(page, "Bridge thickness, base").fill("8");
  await expect(cell(page, "Bridge thickness, Variant A")).toHaveValue("8");
  await expect(cell(page, "Bridge thickness, Variant B")).toHaveValue("9,5");

  // What cannot be read says so where it stands, and is kept.
  await cell(page, "Bridge thickness, Variant B").fill("thick");
  await expect(page.getByRole("alert")).toContainText("is not a number");
  await expect(cell(page, "Bridge thickness, Variant B")).toHaveValue("thick");
  await cell(page, "Bridge thickness, Variant B").fill("9.5");
  await expect(page.getByRole("alert")).toHaveCount(0);
  await page.reload();
  await expect(row(page, "Shim").getByRole("cell")).toHaveCount(4);
});

test("a variant is removed and put back, promoted, and opened as an instrument", async ({
  page,
}) => {
  await openCompare(page);
  await makeThree(page);
  const acts = (name: string): Promise<void> => page.getByLabel(`What to do with ${name}`).click();
  await acts("Variant C");
  await page.getByRole("button", { name: "Remove" }).click();
  await expect(row(page, "Shim").getByRole("cell")).toHaveCount(3);
  await page.getByRole("button", { name: "Put “Variant C” back" }).click();
  await expect(row(page, "Shim").getByRole("cell")).toHaveCount(4);

  const before = await row(page, "Shim").getByRole("cell").nth(2).locator(".figure").textContent();
  await acts("Variant B");
  await page.getByRole("button", { name: "Make it the base" }).click();
  await expect(row(page, "Shim").getByRole("cell").nth(0)).toHaveText(before ?? "");
  await expect(page.getByLabel("Name of the variant").nth(1)).toHaveValue("Before Variant B");
  await expect(cell(page, "Bridge thickness, base")).toHaveValue("9.5");

  await acts("Variant A");
  await page.getByRole("button", { name: "Open as an instrument" }).first().click();
  await expect(page.getByLabel("Name of the instrument")).toHaveValue("Orchestra size, Variant A");
  await expect(row(page, "Shim").getByRole("cell")).toHaveCount(1);
});

test("a sweep tells where the shim enters the window and leaves it, and its value can be dragged and stepped", async ({
  page,
}) => {
  await openCompare(page);
  const sweep = panel(page, "Sweep");
  await sweep.getByLabel("Outcome").selectOption({ label: "Fret plane over the bridge" });
  // The same two shims the core finds when asked for the window's ends, 0 and 1.6 mm, to a thousandth.
  await expect(sweep.getByRole("listitem")).toContainText("comes into its window at 7.429 mm");
  await expect(sweep.getByRole("listitem")).toContainText("leaves its window at 10.551 mm");

  const handle = sweep.getByRole("slider");
  await expect(handle).toHaveAttribute("aria-valuetext", "8.443 mm");
  await handle.focus();
  await page.keyboard.press("ArrowRight");
  await expect(handle).toHaveAttribute("aria-valuetext", "8.5 mm");
  await expect(row(page, "Shim").getByRole("cell").first()).toContainText("8.50 mm");

  await handle.scrollIntoViewIfNeeded();
  const mark = await handle.locator("circle").boundingBox();
  if (mark === null) throw new Error("no handle");
  await page.mouse.move(mark.x + mark.width / 2, mark.y + mark.height / 2);
  await page.mouse.down();
  await page.mouse.move(mark.x + mark.width / 2 + 60, mark.y, { steps: 6 });
  await page.mouse.up();
  const dragged = Number.parseFloat((await handle.getAttribute("aria-valuetext")) ?? "");
  expect(dragged).toBeGreaterThan(9);
  await expect(row(page, "Shim").getByRole("cell").first()).toContainText(dragged.toFixed(2));
});

test("a million draws run while one types, and five million stop", async ({ page }) => {
  await openCompare(page);
  await drawn(page);
  const sure = panel(page, "How sure");
  await sure.getByLabel("Draws", { exact: true }).selectOption({ label: "1 000 000" });
  await expect(sure.getByRole("status")).toContainText("Drawing 1 000 000");
  await cell(page, "Name of the instrument").press("End");
  await cell(page, "Name of the instrument").pressSequentially(" as I type", { delay: 60 });
  await expect(cell(page, "Name of the instrument")).toHaveValue("Orchestra size as I type");
  await expect(sure.getByRole("status")).toContainText("1 000 000 drawn.", { timeout: 60_000 });
  await expect(sure).toContainText("meet every window at once");

  await sure.getByLabel("Draws", { exact: true }).selectOption({ label: "5 000 000" });
  await expect(sure.getByRole("status")).toContainText("Drawing 5 000 000");
  await expect(sure.getByRole("progressbar")).toHaveAttribute("value", /0\.\d*[1-9]/);
  await sure.getByRole("button", { name: "Stop" }).click();
  await expect(sure.getByRole("status")).toContainText(/Stopped at [\d ]+ of 5 000 000/);
  const stopped = await sure.getByRole("status").textContent();
  // What the worker says next is of another job.
  const map = panel(page, "Map of two inputs");
  await map.getByLabel("Up", { exact: true }).selectOption("Bridge thickness");
  await expect(map).toHaveAttribute("aria-busy", "true");
  await expect(map).toHaveAttribute("aria-busy", "false");
  expect(await sure.getByRole("status").textContent()).toBe(stopped);
});

test("the same seed draws the same to the last figure, another does not", async ({ page }) => {
  await openCompare(page);
  const sure = panel(page, "How sure");
  await drawn(page);
  const table = (): Promise<string | null> => sure.getByRole("table").textContent();
  const chance = (): Promise<string | null> => sure.locator(".all-windows").textContent();
  const [first, firstChance] = [await table(), await chance()];
  await sure.getByLabel("Seed").fill("2");
  await expect.poll(chance).not.toBe(firstChance);
  await sure.getByLabel("Seed").fill("1");
  await expect.poll(table).toBe(first);
  expect(await chance()).toBe(firstChance);
});

test("the table is copied and saved, the drawings saved, and the comparison prints on one page", async ({
  page,
  context,
}) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await openCompare(page);
  await makeThree(page);
  await page.getByRole("button", { name: "Copy the table" }).click();
  await expect(page.getByText("Copied, tab-separated.")).toBeVisible();
  const lines = (await page.evaluate(() => navigator.clipboard.readText())).split("\n");
  expect(lines[0]?.split("\t").slice(0, 4)).toEqual(["", "Base", "Base: window", "Variant A"]);
  expect(new Set(lines.map((line) => line.split("\t").length)).size).toBe(1);
  const shim = lines.find((line) => line.startsWith("Shim"))?.split("\t") ?? [];
  expect(Number(shim[1])).toBeCloseTo(8.443, 2);

  const saved = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as CSV" }).click();
  const csv = await readFile(await (await saved).path(), "utf8");
  expect(csv.split("\r\n")[0]).toMatch(/^\uFEFF,Base,Base: window,Variant A,/);
  const drawing = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the sections as SVG" }).click();
  const file = await drawing;
  expect(file.suggestedFilename()).toBe("orchestra-size-sections.svg");
  expect(await readFile(await file.path(), "utf8")).toContain('data-role="variant"');

  const pdf = (await page.pdf({ format: "A4", printBackground: true })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
});

test("nothing runs off the page and all can be read and touched, at any size, light or dark", async ({
  page,
}) => {
  test.slow();
  await openCompare(page);
  await makeThree(page);
  await drawn(page);
  await expectNoViolationAtAnySize(page);
  for (const size of sizes) {
    await page.setViewportSize(size);
    await expect.poll(() => tooLowToTouch(page), `too low at ${size.width}`).toEqual([]);
  }
});

const tooLowToTouch = (page: Page): Promise<unknown[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        "main button, main select, main input, main summary",
      ),
    ]
      .filter((one) => one.checkVisibility() && !one.closest("label"))
      .map((one) => ({ name: one.outerHTML.slice(0, 80), height: one.offsetHeight }))
      .filter(({ height }) => height < 44),
  );
