import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as z from "zod";
import { demoShelf } from "../../../src/instrument/as-built/demo-shelf.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { newDocument } from "../../../src/store/document/state.ts";
import { readFileEntry } from "../../../src/store/files/read-file-entry.ts";
import { shelfFileOf } from "../../../src/store/files/shelf-file.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { memoryStorage } from "../../support/tab.ts";

/*
 * Good files with one place of each spoiled: what the published schema lets pass, the page's own reader
 * takes too, but for what no schema can say of numbers that must fit one another.
 */

type Place = readonly string[];
type Group = Record<string, unknown>;

const fixture = (name: string, from: string) =>
  JSON.parse(readFileSync(new URL(from, import.meta.url), "utf8"))[name];

const schema = z.fromJSONSchema(
  JSON.parse(
    readFileSync(new URL("../../../public/rimwright-file.schema.json", import.meta.url), "utf8"),
  ),
);

const stored = memoryStorage({
  rimwright: JSON.stringify(fixture("rimwright", "fixtures/v2/kept.json")),
});
const documents = [
  readTabCopy(stored),
  ...presets.slice(0, 2).map(newDocument),
  ...demoShelf.slice(0, 2).map(({ instrument, asBuilt }) => ({
    ...newDocument(instrument),
    asBuilt,
  })),
];
const file = JSON.parse(
  JSON.stringify(shelfFileOf(documents.map((document) => ({ document })))),
) as { instruments: Group[] };

const spoiled = [
  null,
  true,
  -1,
  0,
  0.5,
  1e9,
  -1e9,
  "",
  "x".repeat(300),
  "2026-02-30",
  "x\u0000",
  [],
  {},
  undefined,
];

function placesIn(node: unknown, path: Place = []): readonly Place[] {
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, one]) => {
    const place = [...path, key];
    return [place, ...placesIn(one, place)];
  });
}

/** The list with one place spoiled, or null where a list's place would be left out. */
function mutant(place: Place, value: unknown): Group[] | null {
  const copy = structuredClone(file.instruments);
  const last = place.at(-1) ?? "";
  const group = place.slice(0, -1).reduce<unknown>((node, key) => (node as Group)[key], copy);
  if (value === undefined && Array.isArray(group)) return null;
  if (value === undefined) delete (group as Group)[last];
  else (group as Group)[last] = value;
  return copy;
}

const ofNumbersTogether = /low end|out of its reach|saddle falls on the flat|lift the top/i;

test("what the published schema lets pass is read, but for numbers that must fit one another", () => {
  const counts = { tried: 0, passed: 0, together: 0 };
  const others: string[] = [];
  for (const place of placesIn(file.instruments))
    for (const value of spoiled) {
      const instruments = mutant(place, value);
      if (instruments === null) continue;
      counts.tried += 1;
      if (!schema.safeParse({ ...file, instruments }).success) continue;
      counts.passed += 1;
      const text = JSON.stringify(instruments[Number(place[0])]);
      const read = readFileEntry({ path: "entry", text, bare: false });
      if (read.ok) continue;
      if (read.bad.every(({ reason }) => ofNumbersTogether.test(reason))) counts.together += 1;
      else others.push(`${place.join(".")}: ${read.bad.map(({ reason }) => reason).join(" ")}`);
    }
  process.stdout.write(
    `${counts.tried} mutants: ${counts.passed} pass the schema; of those ${counts.together} refused for numbers that do not fit one another, ${others.length} for anything else\n`,
  );
  expect(others).toEqual([]);
  expect(counts.tried).toBeGreaterThan(5_000);
  expect(counts.together).toBeLessThan(counts.tried / 50);
}, 600_000);

test("what only looks as if it had a length is refused, wherever a text or a list belongs", () => {
  const length = { length: { toString: 1, valueOf: 1 } };
  for (const place of placesIn(file.instruments)) {
    const entry = mutant(place, length)?.[Number(place[0])];
    const text = JSON.stringify(entry);
    expect(() => readFileEntry({ path: "entry", text, bare: false })).not.toThrow();
  }
}, 600_000);
