import { readFile } from "node:fs/promises";
import { expect, type Locator, type Page } from "@playwright/test";
import { field } from "./layout-screen.ts";

export const nameField = (page: Page): Locator =>
  page.getByRole("textbox", { name: "Name of the instrument" });

/** The word in the header on how what is on screen stands to the shelf. */
export const savingWord = (page: Page): Locator => page.locator(".header-tools .saving");

/** What the page says over any view of work that is not saved. */
export const trouble = (page: Page): Locator => page.locator(".page-trouble");

export const instruments = (page: Page): Locator =>
  page.getByRole("region", { name: "Instruments" });

export const files = (page: Page): Locator => page.getByRole("region", { name: "Files" });

export const row = (page: Page, name: string): Locator =>
  instruments(page).getByRole("listitem", { name, exact: true });

/** The names on the shelf, as they are listed. */
export const namesOn = (page: Page): Promise<string[]> =>
  instruments(page).locator(".shelf-name bdi").allTextContents();

/** Opens the Shelf view, with what is on it read. */
export async function openShelf(page: Page): Promise<void> {
  await page.goto("./#/shelf");
  await expect(instruments(page)).toBeVisible();
}

/** Opens an instrument and waits until it is on screen, so that nothing that follows overtakes it. */
export async function openRow(page: Page, name: string): Promise<void> {
  await row(page, name)
    .getByRole("button", { name: `Open ${name}`, exact: true })
    .click();
  await expect(field(page, "Body length")).toBeVisible();
}

/** Opens a row's further acts and does one. */
export async function doMore(page: Page, name: string, deed: string): Promise<void> {
  const more = row(page, name).getByRole("button", { name: `More for ${name}`, exact: true });
  if ((await more.getAttribute("aria-expanded")) === "false") await more.click();
  await row(page, name).getByRole("button", { name: deed, exact: true }).click();
}

/** Changes the open instrument and waits until the page says it is saved. */
export async function saveAs(page: Page, name: string, length = "501"): Promise<void> {
  await nameField(page).fill(name);
  await field(page, "Body length").fill(length);
  await expect(savingWord(page)).toHaveText("saved");
}

/** A file of instruments, each named and sized; the rest is the default's. */
export const shelfFile = (
  ...instruments: readonly {
    readonly id?: string;
    readonly name: string;
    readonly length?: number;
  }[]
): string =>
  JSON.stringify({
    format: "rimwright-shelf",
    version: 1,
    instruments: instruments.map(({ id = "", name, length = 490 }) => ({
      instrument: { id, name, body: { length } },
    })),
  });

/** Gives the Shelf view a file by its picker. */
export async function pick(page: Page, text: string, name = "given.json"): Promise<void> {
  await files(page)
    .locator("input[type=file]")
    .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

/** What the page hands out to be saved while `act` runs: its name and its text. */
export async function savedBy(
  page: Page,
  act: () => Promise<unknown>,
): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  return {
    name: download.suggestedFilename(),
    text: await readFile(await download.path(), "utf8"),
  };
}
