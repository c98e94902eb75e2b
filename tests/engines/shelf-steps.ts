import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import {
  button,
  expectText,
  expectValue,
  field,
  open,
  part,
  region,
  rewrite,
  see,
  tap,
  until,
  valueIn,
  write,
} from "./builder.ts";
import type { Engine } from "./engine.ts";
import { bodyLength, figuresOf, nameField, verdict, type Workplace } from "./workplace.ts";

const files = region("Files");
const instruments = region("Instruments");
const row = (name: string) => part("listitem", name, instruments);

/** Renamed on its row, kept over a reload, and undone. */
export async function renameAndUndo({ tab }: Workplace): Promise<readonly string[]> {
  await open(tab, "Layout");
  await rewrite(tab, nameField, "Cedar no. 7");
  await expectText(tab, part("main", ""), /\S/);
  await open(tab, "Shelf");
  await tap(tab, button("More for Cedar no. 7"));
  await tap(tab, button("Rename", row("Cedar no. 7")));
  await rewrite(tab, field("New name"), "Räven no. 7");
  await tap(tab, button("Rename it"));
  await see(tab, row("Räven no. 7"));
  await tab.reload();
  await see(tab, row("Räven no. 7"));
  await expectValue(tab, nameField, "Räven no. 7");
  await open(tab, "Layout");
  const figures = await figuresOf(tab);
  await write(tab, bodyLength, "501");
  expect(await figuresOf(tab)).not.toEqual(figures);
  await tab.reload();
  await expectValue(tab, bodyLength, "501");
  await tap(tab, button("Undo"));
  await expectValue(tab, bodyLength, "19 3/8 in");
  expect(await figuresOf(tab)).toEqual(figures);
  return figures;
}

/** The shelf as a file, and a file of another's into the shelf. */
export async function exportAndImport({ engine, tab }: Workplace): Promise<readonly string[]> {
  await open(tab, "Shelf");
  await tap(tab, button("Export the whole shelf", files));
  await expectText(tab, files, /Saved as a file/);
  const file = await savedFile(engine);
  expect(JSON.parse(file)).toMatchObject({
    format: "rimwright-shelf",
    instruments: [{ instrument: { name: "Räven no. 7" } }],
  });
  const another = test.info().outputPath("another.json");
  await writeFile(another, file.replace("Räven no. 7", "Spruce no. 8").replace(/"id": *"/, "$&b"));
  await tab.giveFile(another);
  await expectText(tab, files, /1 imported/);
  await see(tab, row("Spruce no. 8"));
  await see(tab, row("Räven no. 7"));
  return [];
}

/** The text of the file the page handed out to be saved. */
async function savedFile({ downloads }: Engine): Promise<string> {
  const read = async (): Promise<string> => {
    const [name = ""] = (await readdir(downloads)).filter((one) => one.endsWith(".json"));
    return name === "" ? "" : readFile(join(downloads, name), "utf8");
  };
  return until("the file is whole", read, (text) => /\}\s*$/.test(text));
}

/** What is changed in one window stands in the other. */
export async function twoWindows({ engine, tab, served }: Workplace): Promise<readonly string[]> {
  await open(tab, "Layout");
  const other = await engine.openTab();
  await other.goto(served.address);
  await expectValue(other, nameField, "Räven no. 7");
  await write(other, bodyLength, "495");
  const figures = await figuresOf(other);
  await expectValue(tab, bodyLength, "495");
  expect(await figuresOf(tab)).toEqual(figures);
  await other.close();
  return figures;
}

/** The address holds the whole instrument: another window that opens it shows the same. */
export async function share({ engine, tab }: Workplace): Promise<readonly string[]> {
  const figures = await figuresOf(tab);
  await open(tab, "Shelf");
  await tap(tab, button("More for Räven no. 7"));
  await tap(tab, button("Share", row("Räven no. 7")));
  const address = await valueIn(tab, field(/^Address that opens it/));
  await open(tab, "Layout");
  const other = await engine.openTab();
  await other.goto(address);
  await expectValue(other, nameField, "Räven no. 7");
  expect(await figuresOf(other)).toEqual(figures);
  await other.close();
  return figures;
}

/** With the server gone every view still opens, on the same instrument. */
export async function offline({ tab, served }: Workplace): Promise<readonly string[]> {
  const figures = await figuresOf(tab);
  await tab.run(async () => {
    await navigator.serviceWorker.ready;
  });
  // The worker answers for pages that open once it is there.
  await tab.reload();
  await see(tab, verdict);
  await served.stop();
  await tab.reload();
  await see(tab, verdict);
  expect(await figuresOf(tab)).toEqual(figures);
  for (const view of ["Compare", "Rim", "Bench", "Sheet", "Shelf"]) {
    await open(tab, view);
    await expectText(tab, part("main", ""), opened[view] ?? /unknown view/);
  }
  return figures;
}

/** What is on a view once its code is there. */
const opened: Readonly<Record<string, RegExp>> = {
  Compare: /How sure/,
  Rim: /Plan/,
  Bench: /Set the shim/,
  Sheet: /Print/,
  Shelf: /Räven no. 7/,
};
