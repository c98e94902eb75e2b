import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import * as z from "zod";
import { demoShelf } from "../../../src/instrument/as-built/demo-shelf.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { typeField } from "../../../src/store/document/edits.ts";
import { firstState, newDocument } from "../../../src/store/document/state.ts";
import { fileJsonSchema } from "../../../src/store/files/file-schema.ts";
import { shelfFileOf } from "../../../src/store/files/shelf-file.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { memoryStorage } from "../../support/tab.ts";

const published = new URL("../../../public/rimwright-file.schema.json", import.meta.url);

// Written again with `UPDATE_SCHEMA=1 npx vitest run tests/store/files/file-schema.test.ts && npx biome check --write public`.
if (process.env["UPDATE_SCHEMA"] === "1")
  writeFileSync(published, JSON.stringify(fileJsonSchema(), null, 2));

const schema = JSON.parse(readFileSync(published, "utf8"));

test("the published schema is the one the code reads by", () => {
  expect(JSON.stringify(schema)).toBe(JSON.stringify(fileJsonSchema()));
});

describe("the published schema, as zod's full build reads it back", () => {
  const form = z.fromJSONSchema(schema);
  const fits = (json: unknown): boolean => form.safeParse(JSON.parse(JSON.stringify(json))).success;

  const kept = JSON.parse(
    readFileSync(new URL("fixtures/v1/kept.json", import.meta.url), "utf8"),
  ) as Record<string, unknown>;
  const storage = memoryStorage(
    Object.fromEntries(Object.entries(kept).map(([key, one]) => [key, JSON.stringify(one)])),
  );
  const works = [
    readTabCopy(storage),
    typeField(firstState, "dome.flatLength", "480"),
    ...presets.map(newDocument),
    ...demoShelf.map(({ instrument, asBuilt }) => ({ ...newDocument(instrument), asBuilt })),
  ];
  const file = shelfFileOf(works.map((document) => ({ document })));

  test("fits what is exported, variants, records and half-done numbers among it", () => {
    expect(fits(file)).toBe(true);
    expect(file.instruments.some(({ lastGood }) => lastGood !== undefined)).toBe(true);
    for (const preset of presets) expect(fits(preset)).toBe(true);
    expect(fits({})).toBe(true);
  });

  const [full] = file.instruments;
  const one = (change: object): object => ({ ...file, instruments: [{ ...full, ...change }] });
  test.each([
    ["a newer version", { ...file, version: 2 }],
    ["another format", { ...file, format: "other" }],
    ["no list", { ...file, instruments: 7 }],
    ["no instrument", { ...file, instruments: [{}] }],
    ["a length out of range", one({ instrument: { body: { length: -1 } } })],
    ["a text for a number", one({ instrument: { bridge: { thickness: "9" } } })],
    ["an unknown target", one({ instrument: { target: { kind: "tilt", value: 1 } } })],
    [
      "an unknown change",
      one({
        comparison: { ...full?.comparison, variants: [{ id: "a", name: "A", changes: { x: 1 } }] },
      }),
    ],
    ["a comparison in part", one({ comparison: { variants: [] } })],
    ["a reading without a value", one({ asBuilt: { readings: { shim: { date: "2026-01-01" } } } })],
    ["a date that is none", one({ asBuilt: { done: { level: "yesterday" } } })],
    ["an instrument alone that is none", { name: 7 }],
  ])("does not fit %s", (_, json) => {
    expect(fits(json)).toBe(false);
  });
});
