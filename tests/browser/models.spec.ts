import { readFile } from "node:fs/promises";
import { expect, type Page } from "@playwright/test";
import { expectNoViolationAtAnySize, tooSmallToTouch } from "./any-size.ts";
import { field } from "./layout-screen.ts";
import { test } from "./page.ts";
import {
  doMore,
  instruments,
  namesOn,
  openShelf,
  row,
  saveAs,
  savingWord,
} from "./shelf-screen.ts";

const table = (page: Page) => page.getByRole("region", { name: "Table of instruments" });

/** A model on the shelf, and one instrument made from it that is changed. */
async function makeOne(page: Page): Promise<void> {
  await page.goto("/");
  await saveAs(page, "Model A", "500");
  await openShelf(page);
  await doMore(page, "Model A", "Mark as a model");
  await expect(row(page, "Model A")).toContainText("Nothing on the shelf was made from it yet");
  await row(page, "Model A").getByRole("button", { name: "Make an instrument from it" }).click();
  await expect(field(page, "Body length")).toHaveValue("500");
  await field(page, "Body length").fill("505");
  await expect(savingWord(page)).toHaveText("saved");
}

test("a model has instruments made from it that remember it, through a file to another tablet and on the sticks", async ({
  page,
  browser,
}, info) => {
  await makeOne(page);
  await openShelf(page);
  await page.getByRole("combobox", { name: "Show" }).selectOption("made from Model A");
  expect(await namesOn(page)).toEqual(["Model A, no. 1"]);
  const made = row(page, "Model A, no. 1");
  await made.getByRole("button", { name: "More for Model A, no. 1" }).click();
  await expect(made).toContainText("Body length: 505 mm, model 500 mm");
  await expect(made).toContainText(/shim [\d.]+ mm, dish [\d.]+ mm.*, saddle [\d.]+ mm/);
  await page.getByRole("combobox", { name: "Show" }).selectOption("models");
  await row(page, "Model A").getByRole("button", { name: "More for Model A" }).click();
  await expect(row(page, "Model A")).toContainText("1 instrument was made from it, none finished");

  const saved = page.waitForEvent("download");
  await page.getByRole("button", { name: "Export the whole shelf" }).click();
  const path = info.outputPath("shelf.json");
  await (await saved).saveAs(path);
  expect(JSON.parse(await readFile(path, "utf8")).instruments).toHaveLength(2);
  const context = await browser.newContext();
  const other = await context.newPage();
  await openShelf(other);
  await other.getByLabel("Import a file").setInputFiles(path);
  await expect(other.getByText("2 imported.")).toBeVisible();
  await other.getByRole("combobox", { name: "Show" }).selectOption("made from Model A");
  expect(await namesOn(other)).toEqual(["Model A, no. 1"]);
  await context.close();

  await page.getByRole("link", { name: "Sticks", exact: true }).click();
  await page.getByRole("combobox", { name: "Model" }).selectOption("Model A");
  await expect(table(page).getByRole("checkbox")).toHaveCount(2);
  // No model again, one undo takes the mark back.
  await openShelf(page);
  await doMore(page, "Model A, no. 1", "Mark as a model");
  await expect(row(page, "Model A, no. 1")).toContainText("model, ");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(row(page, "Model A, no. 1")).not.toContainText("model, ");
});

test("the shelf with a model and what was made from it is sound at every size", async ({
  page,
}) => {
  await makeOne(page);
  await openShelf(page);
  for (const name of ["Model A", "Model A, no. 1"])
    await row(page, name)
      .getByRole("button", { name: `More for ${name}`, exact: true })
      .click();
  await expect(instruments(page)).toContainText("It differs in:");
  await expectNoViolationAtAnySize(page);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await tooSmallToTouch(page)).toEqual([]);
});
