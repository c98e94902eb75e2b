import { expect, type Page } from "@playwright/test";
import { loopOf, pointedCutaway, roundedCutaway } from "../support/uneven-bodies.ts";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { test } from "./page.ts";
import { savingWord } from "./shelf-screen.ts";

async function openRim(page: Page): Promise<void> {
  await page.goto("/#/rim");
  await expect(page.getByRole("img", { name: /^Plan of the rim/ })).toBeVisible();
}

const treble = (page: Page) => page.getByRole("table", { name: /^Treble side/ });

test("a body with a cutaway, traced whole as SVG, keeps both halves through plan, sides, templates and a reload", async ({
  page,
}) => {
  await openRim(page);
  // Neck end up, as a drawing hangs on the wall; y runs down the page.
  const path = loopOf(roundedCutaway).map(
    ([x, y]) => `${(300 - y).toFixed(2)} ${(520 - x).toFixed(2)}`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="600mm" viewBox="0 0 600 600"><path d="M${path.join("L")}Z"/></svg>`;
  await page.getByLabel("A file, .csv or .svg").setInputFiles({
    ...{ name: "cutaway.svg", mimeType: "image/svg+xml", buffer: Buffer.from(svg) },
  });
  await expect(page.getByLabel("Use", { exact: true })).toHaveValue("both");
  await page.getByRole("button", { name: "Use this outline" }).click();
  await expect(page.getByText(/the treble half one of \d+/)).toBeVisible();
  await expect(treble(page).getByRole("row", { name: /horn/ })).toBeVisible();
  await expect(page.getByRole("heading", { name: "Treble side" })).toBeVisible();
  await page.getByLabel(/Left-handed/).check();
  await expect(savingWord(page)).toHaveText("saved");
  await page.reload();
  await expect(treble(page)).toBeVisible();
  await expect(page.getByLabel(/Left-handed/)).toBeChecked();
  await expectNoViolationAtAnySize(page);
  await page.goto("/#/sheet");
  await expect(page.getByText("along each side")).toBeVisible();
  for (const name of ["Whole outline", "Bass side pattern", "Treble side pattern"]) {
    await page.getByLabel("Page or template").selectOption(name);
    await expect(page.getByText(/pages, full size/)).toBeVisible();
  }
  await page.goto("/#/rim");
  await page.getByRole("button", { name: "Mirror the bass half" }).click();
  await expect(treble(page)).toHaveCount(0);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(treble(page)).toBeVisible();
});

test("a scoop past the break is refused with how far, and what is offered mends it", async ({
  page,
}) => {
  await openRim(page);
  const csv = loopOf(pointedCutaway).map((place) => place.map((v) => v.toFixed(2)).join(";"));
  await page.getByLabel("Or paste it here").fill(csv.join("\n"));
  await page.getByRole("button", { name: "Use this outline" }).click();
  await expect(treble(page)).toBeVisible();
  await page.goto("/#/layout");
  await page.getByRole("textbox", { name: "Break from the neck end" }).first().fill("60");
  await expect(
    page.getByText(/cutaway on the treble side reaches .* tailward of the break/).first(),
  ).toBeVisible();
});
