import { describe, expect, test } from "vitest";
import { emptyAsBuilt } from "../../../src/instrument/as-built/as-built.ts";
import { stepField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { recorded } from "../../../src/store/document/undo.ts";
import { addVariant } from "../../../src/store/document/variant-edits.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { withValidParts } from "../../../src/store/shelf/valid-parts.ts";
import { memoryStorage } from "../../support/tab.ts";

const { comparison } = addVariant(firstState, "a");
const asBuilt = { ...emptyAsBuilt, done: { level: "2026-05-14" } };

/** A kept state with a part of its record spoiled by hand, and one act that has it too. */
function spoiled(part: object): State {
  const sound = { ...firstState, comparison, asBuilt: { ...asBuilt, ...part } };
  const state = recorded(sound, stepField(sound, "body.length", 1));
  const storage = memoryStorage();
  writeTabCopy(storage, state);
  return readTabCopy(storage);
}

describe("what the tab kept beside the instrument", () => {
  test("is the very same state when it is sound", () => {
    const state = spoiled({});
    expect(state).toMatchObject({ comparison, asBuilt });
    expect(withValidParts(state)).toBe(state);
  });

  test.each([
    { readings: { shim: { value: "wide", date: "2026-05-14", note: "" } } },
    { readings: { none: { value: 1, date: "2026-05-14", note: "" } } },
    { notes: { level: 7 } },
    { taken: [7] },
  ])("is the record without that, in its acts too, where it holds %j", (part) => {
    const state = withValidParts(spoiled(part));
    expect([state.asBuilt, state.past[0]?.asBuilt]).toEqual([asBuilt, asBuilt]);
    expect(state.comparison).toEqual(comparison);
    expect(state.instrument.body.length).toBe(firstState.instrument.body.length + 1);
  });

  test.each([{ readings: null }, { taken: "all" }, { format: "other" }, { version: 2 }])(
    "is an empty record at once where its outer form is %j",
    (part) => {
      expect(spoiled(part).asBuilt).toEqual(emptyAsBuilt);
    },
  );

  test("leaves out of a comparison what no field can hold", () => {
    const variants = [{ id: "a", name: "A", changes: { "neck.scale": 630, "no.such": 1 } }];
    const storage = memoryStorage();
    writeTabCopy(storage, { ...firstState, comparison: { ...comparison, variants } });
    expect(withValidParts(readTabCopy(storage)).comparison.variants).toEqual([
      { id: "a", name: "A", changes: { "neck.scale": 630 } },
    ]);
  });
});
