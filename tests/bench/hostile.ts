import "fake-indexeddb/auto";
import { readShareText } from "../../src/store/files/share.ts";
import { readImport } from "../../src/store/shelf/import.ts";
import { Shelf } from "../../src/store/shelf/shelf.ts";
import { openShelfDatabase } from "../../src/store/shelf/shelf-database.ts";
import { bigFiles, bombs, packed } from "../store/files/hostile-input.ts";
import { duration, report } from "./report.ts";

/** Times what was made to hold the page up: large files, deep ones, and addresses that unfold to many times their length. */
export async function benchHostileInput(): Promise<void> {
  const news = { superseded: () => {}, blocked: () => {} };
  const database = await openShelfDatabase(news, "hostile");
  const shelf = new Shelf(database);
  const rows: string[][] = [];
  for (const [name, file] of bigFiles)
    rows.push([name, await leastTime(() => readImport(shelf, file()))]);
  for (const [name, text] of bombs)
    rows.push([`unfolds to ${name}`, await leastTime(() => readShareText(packed(text)))]);
  database.close();
  report(
    "Files and addresses made to hold the page up",
    [["", "processor time"], ...rows],
    "The least of three; goal: 200 ms each.",
  );
}

async function leastTime(read: () => Promise<unknown>): Promise<string> {
  const spent: number[] = [];
  for (let i = 0; i < 3; i += 1) {
    const before = process.cpuUsage();
    await read();
    const { user, system } = process.cpuUsage(before);
    spent.push((user + system) / 1000);
  }
  return duration(Math.min(...spent));
}
