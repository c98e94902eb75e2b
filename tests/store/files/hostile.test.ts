import { readFileSync } from "node:fs";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { presets } from "../../../src/instrument/presets.ts";
import { solvedPlan } from "../../../src/store/document/plan.ts";
import { newDocument } from "../../../src/store/document/state.ts";
import { readShareText } from "../../../src/store/files/share.ts";
import { readImport, runImport } from "../../../src/store/shelf/import.ts";
import type { Shelf } from "../../../src/store/shelf/shelf.ts";
import type { ShelfDatabase } from "../../../src/store/shelf/shelf-database.ts";
import { newEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { openShelf, openTab } from "../../support/tab.ts";
import { bigFiles, bombs, many, packed, spoiled, torn } from "./hostile-input.ts";

const fixture = (name: string): string =>
  readFileSync(new URL(`fixtures/v1/${name}`, import.meta.url), "utf8");
// Without the traced one, whose plan takes longer than all the rest.
const whole = JSON.parse(fixture("shelf-file.json"));
const shelfText = JSON.stringify({
  ...whole,
  instruments: [whole.instruments[0], { instrument: { id: "b", name: "Beside it" } }],
});

let shelf: Shelf;
let database: ShelfDatabase;
const dump = async () => [await database.getAll("entries"), await database.getAll("cards")];

beforeAll(async () => {
  ({ shelf, database } = await openShelf({ stays: true }));
  const [preset] = presets;
  if (preset !== undefined) await shelf.save(newEntry(newDocument(preset), 1));
});

/** What was tried, and how much of it held an instrument. */
class Tally {
  tried = 0;
  sound = 0;

  say(of: string): void {
    process.stdout.write(`${of}: ${this.tried} tried, ${this.sound} held something sound\n`);
  }
}

/** Stops at a number that no file can hold. */
function finite(key: string, value: unknown): unknown {
  if (typeof value === "number" && !Number.isFinite(value)) expect.fail(`${key} is ${value}`);
  return value;
}

async function tryFile(tally: Tally, file: Blob): Promise<void> {
  tally.tried += 1;
  const reading = await readImport(shelf, file);
  if (!reading.ok) return expect(reading.reason).not.toBe("");
  const { fresh, clashes, bad } = reading.plan;
  const documents = [...fresh, ...clashes.map(({ document }) => document)];
  tally.sound += documents.length > 0 ? 1 : 0;
  for (const document of documents) {
    if (!solvedPlan(document.lastGood).ok) expect.fail("taken in without a plan");
    JSON.stringify(document, finite);
  }
  for (const { reason } of bad) expect(reason).not.toBe("");
}

const size = { shelves: 5000, alone: 3000, torn: 4000, any: 3000, fragments: 6000 };
const sampled = <T>(from: fc.Arbitrary<T>, numRuns: number): T[] =>
  fc.sample(from, { numRuns, seed: 5 });

describe("hostile input", () => {
  test("20 000 instruments in one file: the page has its turn in between, many times", async () => {
    const file = new Blob([many('{"instrument":{"id":"a","body":{"length":-1}}}', 20_000)]);
    let turns = 0;
    const ticking = setInterval(() => {
      turns += 1;
    }, 0);
    const reading = await readImport(shelf, file);
    clearInterval(ticking);
    expect(reading.ok && reading.plan.bad).toHaveLength(20_000);
    expect(turns).toBeGreaterThan(5);
  });

  test("files: none crashes, none changes the shelf", async () => {
    const before = await dump();
    const tally = new Tally();
    for (const text of sampled(spoiled(shelfText), size.shelves))
      await tryFile(tally, new Blob([text]));
    for (const text of sampled(spoiled(fixture("instrument.json")), size.alone))
      await tryFile(tally, new Blob([text]));
    for (const bytes of sampled(torn(Buffer.from(shelfText)), size.torn))
      await tryFile(tally, new Blob([new Uint8Array(bytes)]));
    for (const value of sampled(fc.jsonValue({ noUnicodeString: false }), size.any / 2)) {
      await tryFile(tally, new Blob([JSON.stringify(value)]));
      const instruments = Array.isArray(value) ? value : [value, { instrument: value }];
      const json = { format: "rimwright-shelf", version: 1, instruments };
      await tryFile(tally, new Blob([JSON.stringify(json)]));
    }
    tally.say("files");
    expect(await dump()).toEqual(before);
    expect("polluted" in {}).toBe(false);
    expect(tally.sound).toBeGreaterThan(500);
  });

  test.each(bigFiles)("%s", async (_, file) => {
    const tally = new Tally();
    await tryFile(tally, file());
  });

  test("fragments: none crashes, none unfolds beyond its limit", async () => {
    const tally = new Tally();
    const sound = fixture("fragment.txt").trim();
    const kinds: readonly (readonly [fc.Arbitrary<string>, number])[] = [
      [fc.string({ unit: "binary", maxLength: 300 }).map((text) => `1${text}`), 1 / 6],
      [fc.base64String({ maxLength: 400 }).map((text) => `1${text}`), 1 / 6],
      [torn(Buffer.from(sound)).map((bytes) => bytes.toString("latin1")), 1 / 3],
      [spoiled(fixture("instrument.json")).map(packed), 1 / 3],
    ];
    for (const [from, share] of kinds)
      for (const text of sampled(from, size.fragments * share)) await tryFragment(tally, text);
    tally.say("fragments");
    expect("polluted" in {}).toBe(false);
    expect(tally.sound).toBeGreaterThan(100);
  });

  test.each(bombs)("a fragment that unfolds to %s is read or refused", async (_, text, sound) => {
    const tally = new Tally();
    const bomb = packed(text);
    expect(bomb.length).toBeLessThan(20_000);
    await tryFragment(tally, bomb);
    expect(tally.sound).toBe(sound);
  });

  async function tryFragment(tally: Tally, text: string): Promise<void> {
    tally.tried += 1;
    const read = await readShareText(text);
    if (!read.ok) return expect(read.problems[0]?.message).not.toBe("");
    tally.sound += 1;
    JSON.stringify(read.instrument, finite);
  }

  test("what is taken in changes the shelf by what is reported, and nothing else", async () => {
    const { shelf: own } = await openShelf();
    const { session } = openTab(own);
    for (const text of sampled(spoiled(shelfText), 200)) {
      const before = await own.cards();
      const reading = await readImport(own, new Blob([text]));
      if (!reading.ok) continue;
      const done = await runImport(session, reading.plan);
      const after = await own.cards();
      expect(after.length).toBe(before.length + done.added);
      const known = new Set(before.map(({ id }) => id));
      expect(after.filter(({ id }) => known.has(id))).toEqual(before);
    }
    expect(await own.unreadable()).toEqual([]);
    const cards = await own.cards();
    expect(cards.length).toBeGreaterThan(10);
    for (const { id } of cards) expect(await own.open(id)).toBeDefined();
  });
});
