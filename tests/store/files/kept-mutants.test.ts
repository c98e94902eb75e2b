import { readFileSync } from "node:fs";
import { dequal as equal } from "dequal/lite";
import { expect, test } from "vitest";
import { asJson, type Json } from "../../../src/store/document/json.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { entryForm, readMendedEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { tabKey } from "../../../src/store/shelf/tab-copy.ts";
import { tabCopyDamage } from "../../../src/store/shelf/tab-copy-damage.ts";
import { withValidParts } from "../../../src/store/shelf/valid-parts.ts";
import { memoryStorage } from "../../support/tab.ts";
import { hostileValues } from "./hostile-input.ts";

/*
 * Kept states with one value of each replaced: nothing throws, the rest is as it was, and what is not taken as it
 * stands is named.
 */

const fixture = (name: string) =>
  JSON.parse(readFileSync(new URL(`fixtures/v2/${name}`, import.meta.url), "utf8"));

/** Without its steps of undo: they are read as an entry's are. */
const { history: _, ...kept } = fixture("kept.json").rimwright as Json;
// What was plotted of one shim for several is no longer a comparison's, and is not read.
const { family: __, ...comparison } = asJson(kept["comparison"]);
const copy: Json = { ...kept, comparison };
const whole = readMendedEntry(fixture("database.json").entries[0])?.value;
if (whole === undefined) throw new Error("The fixture cannot be read.");
const [step, ...steps] = whole.history.past;
if (step === undefined) throw new Error("The fixture has no undo.");
/** With one step of undo: another is read no otherwise. */
const entry = JSON.parse(
  JSON.stringify(entryForm({ ...whole, history: { past: [step], future: steps.slice(0, 1) } })),
) as Json;

type Place = readonly string[];

/** Every place in a JSON value, groups before what is in them. */
function placesIn(json: unknown, at: Place = []): readonly Place[] {
  return Object.entries(asJson(json)).flatMap(([key, value]) => [
    [...at, key],
    ...placesIn(value, [...at, key]),
  ]);
}

const valueAt = (json: unknown, place: Place): unknown =>
  place.reduce<unknown>((node, key) => asJson(node)[key], json);

function withAt(json: unknown, place: Place, value: unknown): Json {
  const spoiled = structuredClone(json) as Json;
  const [last = "", ...above] = [...place].reverse();
  Object.assign(asJson(valueAt(spoiled, above.reverse())), { [last]: structuredClone(value) });
  return spoiled;
}

/** The smaller of them: a text of 100,000 characters is refused where one of 300 is. */
const values = hostileValues.filter((value) => (JSON.stringify(value) ?? "").length < 2_000);

/** A quarter of them, another at each place than at the one before. */
const turnOf = (place: number): readonly unknown[] =>
  values.filter((_, i) => (i + place) % 4 === 0);

/** Parts of a document that are read each for itself. */
const parts = ["instrument", "lastGood", "comparison", "asBuilt"] as const;
type Part = (typeof parts)[number];
const isPart = (key: string): key is Part => (parts as readonly string[]).includes(key);

/** What a group does not state is as at first, and what no field has the name of is nobody's. */
const isGroup = (value: unknown): boolean =>
  typeof value === "object" && value !== null && !Array.isArray(value);

test("a shelf's entry with one value replaced costs that alone, and says so", () => {
  const places = placesIn(entry).filter(([first]) => first === "work" || first === "history");
  const unnamed: string[] = [];
  let [tried, named, none] = [0, 0, 0];
  for (const [i, place] of places.entries()) {
    for (const value of turnOf(i)) {
      tried += 1;
      const read = readMendedEntry(withAt(entry, place, value));
      const where = `${place.join(".")} = ${JSON.stringify(value)}`;
      if (read === null) {
        none += 1;
        // Without a document there is nothing to open: the record is kept as it is.
        expect(place, where).toEqual(["work"]);
        continue;
      }
      named += Math.sign(read.leftOut.length);
      const form = entryForm(read.value) as unknown as Json;
      for (const part of parts)
        if (place[0] !== "work" || place[1] !== part)
          expect(equal(valueAt(form, ["work", part]), valueAt(entry, ["work", part])), where).toBe(
            true,
          );
      if (place[0] === "work") expect(form["history"], where).toEqual(entry["history"]);
      const isNamed = read.leftOut.length > 0;
      if (place[0] === "work" && isPart(place[1] ?? "") && !isNamed && !isGroup(value))
        if (!equal(valueAt(form, place), value)) unnamed.push(where);
    }
  }
  expect(unnamed).toEqual([]);
  process.stdout.write(
    `entries: ${tried} tried, ${named} with parts named, ${none} kept as a whole\n`,
  );
});

test("a tab's copy with one value replaced opens with the rest of it, and what is lost is named", () => {
  const before = tabRead(copy);
  let [tried, named, none] = [0, 0, 0];
  const silent: string[] = [];
  for (const [i, place] of placesIn(copy).entries())
    for (const value of turnOf(i)) {
      tried += 1;
      const where = `${place.join(".")} = ${JSON.stringify(value)}`;
      const { state, damage } = tabRead(withAt(copy, place, value));
      named += damage === null ? 0 : 1;
      const [first = ""] = place;
      if (damage !== null && damage.parts === undefined) {
        none += 1;
        // The instrument as it is has no plan: without the last that had one there is nothing to draw.
        expect(first, where).toBe("lastGood");
        continue;
      }
      if (first !== "version")
        for (const part of parts)
          if (part !== first) expect(equal(state[part], before.state[part]), where).toBe(true);
      if (isPart(first) && damage === null && !isGroup(value))
        if (!equal(valueAt(state, place), value)) silent.push(where);
    }
  expect(silent).toEqual([]);
  process.stdout.write(
    `tab's copies: ${tried} tried, ${named} with parts named, ${none} kept as a whole\n`,
  );
});

function tabRead(json: Json) {
  const storage = memoryStorage({ [tabKey]: JSON.stringify(json) });
  return { state: withValidParts(readTabCopy(storage)), damage: tabCopyDamage(storage) };
}
