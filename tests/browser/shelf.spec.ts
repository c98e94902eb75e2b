import { expect } from "@playwright/test";
import { field, shownShim } from "./layout-screen.ts";
import { test } from "./page.ts";
import {
  doMore,
  files,
  instruments,
  nameField,
  namesOn,
  openRow,
  openShelf,
  pick,
  row,
  saveAs,
  savedBy,
  savingWord,
  shelfFile,
} from "./shelf-screen.ts";

test("an empty shelf offers invented instruments that say so, and one of them opens", async ({
  page,
}) => {
  await openShelf(page);
  await page.getByRole("button", { name: "Put the invented ones on the shelf" }).click();
  await expect(instruments(page)).toContainText("5 instruments");
  for (const name of await namesOn(page)) expect(name).toMatch(/^Invented: /);
  await expect(row(page, "Invented: parlour size, cedar").locator("svg")).toBeVisible();
  await openRow(page, "Invented: parlour size, cedar");
  await expect(nameField(page)).toHaveValue("Invented: parlour size, cedar");
  expect(await shownShim(page)).toBeGreaterThan(0);
});

test("an instrument comes to the shelf with its first change, and opens as it was left", async ({
  page,
}) => {
  await page.goto("/");
  await saveAs(page, "Number one", "499.5");
  await openShelf(page);
  await expect(row(page, "Number one")).toContainText("open now");
  await pick(page, shelfFile({ name: "Number two" }));
  await openRow(page, "Number two");
  await expect(nameField(page)).toHaveValue("Number two");
  await openShelf(page);
  await openRow(page, "Number one");
  await expect(field(page, "Body length")).toHaveValue("499.5");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(field(page, "Body length")).not.toHaveValue("499.5");
});

test("names are found by their words, and put in order", async ({ page }) => {
  await openShelf(page);
  await pick(
    page,
    shelfFile({ name: "Spruce 10" }, { name: "Épicéa 2" }, { name: "Spruce 9" }, { name: "" }),
  );
  await expect(instruments(page)).toContainText("4 instruments");
  await page.getByLabel("Order").selectOption("by name");
  expect(await namesOn(page)).toEqual(["Épicéa 2", "Spruce 9", "Spruce 10", "Unnamed instrument"]);
  await page.getByLabel("Find").fill("10 SPRUCE");
  expect(await namesOn(page)).toEqual(["Spruce 10"]);
  await page.getByLabel("Find").fill("epicea");
  expect(await namesOn(page)).toEqual(["Épicéa 2"]);
  await page.getByLabel("Find").fill("maple");
  await expect(instruments(page)).toContainText("No name here has those words.");
});

test("a kept instrument is renamed without opening it, and the open one too", async ({ page }) => {
  await page.goto("/");
  await saveAs(page, "Open one");
  await openShelf(page);
  await pick(page, shelfFile({ name: "Kept one" }));
  for (const [name, other] of [
    ["Kept one", "Kept, renamed"],
    ["Open one", "Open, renamed"],
  ] as const) {
    await doMore(page, name, "Rename");
    await page.getByLabel("New name").fill(other);
    await page.getByRole("button", { name: "Rename it" }).click();
    await expect(row(page, other)).toBeVisible();
  }
  await expect(nameField(page)).toHaveValue("Open, renamed");
  await page.reload();
  await expect(row(page, "Open, renamed")).toBeVisible();
  await expect(row(page, "Kept, renamed")).toBeVisible();
  expect(await namesOn(page)).toHaveLength(2);
});

test("a copy stands beside its original, under a name of its own", async ({ page }) => {
  await openShelf(page);
  await pick(page, shelfFile({ name: "Original", length: 488 }));
  await doMore(page, "Original", "Duplicate");
  await openRow(page, "Original, copy");
  await expect(field(page, "Body length")).toHaveValue("488");
  await field(page, "Body length").fill("477");
  await expect(savingWord(page)).toHaveText("saved");
  await openShelf(page);
  await openRow(page, "Original");
  await expect(field(page, "Body length")).toHaveValue("488");
});

test("what is taken off comes back whole, with its way back", async ({ page }) => {
  await page.goto("/");
  await saveAs(page, "Taken", "487");
  await openShelf(page);
  await pick(page, shelfFile({ name: "Other" }));
  await openRow(page, "Other");
  await openShelf(page);
  await doMore(page, "Taken", "Take off the shelf");
  await expect(row(page, "Taken")).toHaveCount(0);
  await page.getByRole("button", { name: "Put it back" }).click();
  await openRow(page, "Taken");
  await expect(field(page, "Body length")).toHaveValue("487");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(field(page, "Body length")).toHaveValue("492");
});

test("the whole shelf goes out to a file and comes into another browser the same", async ({
  page,
  browser,
  baseURL,
}) => {
  await openShelf(page);
  await page.getByRole("button", { name: "Put the invented ones on the shelf" }).click();
  await expect(instruments(page)).toContainText("5 instruments");
  const exportAll = files(page).getByRole("button", { name: "Export the whole shelf" });
  const out = await savedBy(page, () => exportAll.click());
  expect(out.name).toMatch(/^rimwright-shelf-\d{4}-\d\d-\d\d\.json$/);
  await expect(page.locator(".shelf-nudge")).toHaveCount(0);

  const context = await browser.newContext({ serviceWorkers: "block" });
  const other = await context.newPage();
  await other.goto(`${baseURL}#/shelf`);
  await pick(other, out.text);
  await expect(files(other)).toContainText("5 imported.");
  const back = await savedBy(other, () =>
    files(other).getByRole("button", { name: "Export the whole shelf" }).click(),
  );
  expect(inOrder(back.text)).toEqual(inOrder(out.text));
  await pick(other, out.text);
  await expect(files(other)).toContainText("0 imported; 5 on the shelf already.");
  await context.close();
});

test("one instrument goes out to a file named after it", async ({ page }) => {
  await openShelf(page);
  await pick(page, shelfFile({ id: "x1", name: "Räven: no. 3/4" }));
  const out = await savedBy(page, () => doMore(page, "Räven: no. 3/4", "Export"));
  expect(out.name).toBe("räven-no-3-4-rimwright.json");
  expect(JSON.parse(out.text)).toMatchObject({
    format: "rimwright-shelf",
    instruments: [{ instrument: { id: "x1", name: "Räven: no. 3/4" } }],
  });
});

test("good instruments come in by drop beside bad ones, each told with its place and reason", async ({
  page,
}) => {
  await openShelf(page);
  const text = JSON.stringify({
    format: "rimwright-shelf",
    version: 1,
    instruments: [
      { instrument: { name: "Good" } },
      { instrument: { name: "Short", body: { length: -3 } } },
      { instrument: { name: "<img src=x onerror=alert(1)>" } },
      7,
    ],
  });
  const given = await page.evaluateHandle((json) => {
    const data = new DataTransfer();
    data.items.add(new File([json], "dropped.json"));
    return data;
  }, text);
  await page.locator("main").dispatchEvent("drop", { dataTransfer: given });
  await expect(files(page)).toContainText("2 imported.");
  await expect(files(page)).toContainText("instruments[1].instrument.body.length");
  await expect(files(page)).toContainText("instruments[3]");
  await expect(row(page, "Good")).toBeVisible();
  await expect(row(page, "<img src=x onerror=alert(1)>")).toBeVisible();
});

for (const [choice, after] of [
  [null, ["Mine", "Theirs"]],
  ["replace the shelf’s", ["Theirs"]],
  ["leave the file’s out", ["Mine"]],
] as const) {
  test(`the same id with other content is asked about: ${choice ?? "keep both, unless told"}`, async ({
    page,
  }) => {
    await openShelf(page);
    await pick(page, shelfFile({ id: "twin", name: "Mine", length: 480 }));
    await expect(row(page, "Mine")).toBeVisible();
    await pick(page, shelfFile({ id: "twin", name: "Theirs", length: 485 }));
    const question = page.getByRole("region", { name: /on the shelf already, and differs/ });
    await expect(question).toContainText("Theirs, on the shelf as Mine");
    expect(await namesOn(page)).toEqual(["Mine"]);
    if (choice !== null) await question.getByRole("combobox").selectOption(choice);
    await question.getByRole("button", { name: "Import them" }).click();
    await expect(question).toHaveCount(0);
    expect((await namesOn(page)).sort()).toEqual([...after]);
    if (choice?.startsWith("replace")) {
      await openRow(page, "Theirs");
      await page.getByRole("button", { name: "Undo" }).click();
      await expect(nameField(page)).toHaveValue("Mine");
    }
  });
}

for (const [what, text, told] of [
  ["newer file", '{"format":"rimwright-shelf","version":99,"instruments":[]}', /newer Rimwright/],
  ["file that is no JSON", "%PDF-1.7", /no JSON text/],
  ["file that is too large", " ".repeat(10_000_001), /larger than 10 MB/],
] as const) {
  test(`a ${what} is refused with nothing touched`, async ({ page }) => {
    await openShelf(page);
    await pick(page, shelfFile({ name: "Mine" }));
    await expect(row(page, "Mine")).toBeVisible();
    await pick(page, text);
    await expect(files(page)).toContainText(told);
    expect(await namesOn(page)).toEqual(["Mine"]);
  });
}

test("an address shows its instrument and puts nothing on the shelf until it is kept", async ({
  page,
  browser,
  baseURL,
}) => {
  await openShelf(page);
  await pick(page, shelfFile({ name: "Sent round", length: 481 }));
  await doMore(page, "Sent round", "Share");
  const address = await page.getByLabel("Address that opens it").inputValue();

  const context = await browser.newContext({
    serviceWorkers: "block",
    ...(baseURL === undefined ? {} : { baseURL }),
  });
  const other = await context.newPage();
  await other.goto(address);
  await expect(nameField(other)).toHaveValue("Sent round");
  await expect(field(other, "Body length")).toHaveValue("481");
  await expect(other.getByText("This came from an address")).toBeVisible();
  await openShelf(other);
  await expect(instruments(other)).toContainText("Nothing is on the shelf yet");
  await other.getByRole("button", { name: "Save", exact: true }).click();
  await expect(row(other, "Sent round")).toBeVisible();
  await expect(other.getByText("This came from an address")).toHaveCount(0);
  await context.close();
});

test("the shelf's instruments are laid on the sticks, with the invented ones or alone", async ({
  page,
}) => {
  await page.goto("/#/sticks");
  const table = page.getByRole("region", { name: "Table of instruments" });
  await expect(table.getByRole("checkbox", { name: "Jumbo size" })).toBeVisible();
  await openShelf(page);
  await pick(page, shelfFile({ name: "Mine, kept" }));
  await expect(row(page, "Mine, kept")).toBeVisible();
  await page.getByRole("link", { name: "Sticks", exact: true }).click();
  await expect(table.getByRole("checkbox", { name: "Mine, kept" })).toBeChecked();
  await expect(table.getByRole("checkbox", { name: "Jumbo size" })).toBeChecked();
  await page.getByRole("button", { name: "shelf", exact: true }).click();
  await expect(table.getByRole("checkbox", { name: "Mine, kept" })).toBeChecked();
  await expect(table.getByRole("checkbox", { name: "Jumbo size" })).toHaveCount(0);
});

test("an address that is damaged says so, and what is open stays", async ({ page }) => {
  await page.goto("/");
  await saveAs(page, "Still here");
  await page.goto("/#/open/1AAAA");
  await expect(page.getByRole("alert")).toContainText("The address is damaged");
  await expect(nameField(page)).toHaveValue("Still here");
});

/** A shelf's file with its instruments in the order of their ids. */
function inOrder(text: string): unknown {
  const file = JSON.parse(text) as { instruments: { instrument: { id: string } }[] };
  file.instruments.sort((a, b) => (a.instrument.id < b.instrument.id ? -1 : 1));
  return file;
}
