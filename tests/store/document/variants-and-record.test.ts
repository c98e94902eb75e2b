import { describe, expect, test } from "vitest";
import { emptyAsBuilt } from "../../../src/instrument/as-built/as-built.ts";
import {
  finish,
  markStep,
  noteMeasurement,
  stepMeasurement,
  typeMeasurement,
} from "../../../src/store/document/as-built-edits.ts";
import { firstComparison } from "../../../src/store/document/comparison.ts";
import { startFrom, stepField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { makeStore } from "../../../src/store/document/store.ts";
import { documentIn, recorded, redo, undo } from "../../../src/store/document/undo.ts";
import {
  addVariant,
  aimVariant,
  changeVariant,
  makeBase,
  nameVariant,
  plot,
  removeVariant,
} from "../../../src/store/document/variant-edits.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { makeShopStore } from "../../../src/store/shelf/shop.ts";
import { openShop } from "../../../src/store/shelf/shop-storage.ts";
import { writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { memoryStorage } from "../../support/tab.ts";

const { instrument } = firstState;
const day = "2026-05-14";
const mm = (text: string) => ({ text, units: "mm" }) as const;

function openPage(first: State = firstState) {
  const store = makeStore(first);
  const shop = makeShopStore();
  openShop(shop, memoryStorage(), store, new EventTarget());
  const edit = (change: (state: State) => State) =>
    store.setState((state) => recorded(state, change(state)));
  const variants = () => store.getState().comparison.variants;
  const record = () => store.getState().asBuilt;
  const steps = () => store.getState().past.length;
  return { store, shop, edit, variants, record, steps };
}

describe("variants", () => {
  test("made the base in turn, two change places, and their names with them", () => {
    const page = openPage();
    page.edit((state) => addVariant(state, "a"));
    page.edit((state) => changeVariant(state, "a", "dome.flatLength", 120));
    const names = Array.from({ length: 28 }, () => {
      page.edit((state) => makeBase(state, "a"));
      return page.variants()[0]?.name;
    });
    expect(names.slice(0, 3)).toEqual(["Before Variant A", "Variant A", "Before Variant A"]);
    page.edit((state) => nameVariant(state, "a", "x".repeat(80)));
    page.edit((state) => makeBase(state, "a"));
    expect(page.variants()[0]?.name).toBe(`Before ${"x".repeat(53)}`);
  });

  test("added, removed, renamed: each is taken back and done again", () => {
    const page = openPage();
    page.edit((state) => addVariant(state, "a"));
    page.edit((state) => addVariant(state, "b"));
    page.edit((state) => nameVariant(state, "b", "Flat"));
    page.edit((state) => removeVariant(state, "a"));
    const seen = [page.variants()];
    while (page.steps() > 0) {
      page.edit(undo);
      seen.unshift(page.variants());
    }
    expect(seen.map((list) => list.map(({ name }) => name))).toEqual([
      [],
      ["Variant A"],
      ["Variant A", "Variant B"],
      ["Variant A", "Flat"],
      ["Flat"],
    ]);
    for (let i = 1; i < seen.length; i++) {
      page.edit(redo);
      expect(page.variants()).toEqual(seen[i]);
    }
    expect(page.variants()).toEqual(seen.at(-1));
  });

  test("a name or a number typed letter by letter is one act", () => {
    const page = openPage();
    page.edit((state) => addVariant(state, "a"));
    for (const name of ["F", "Fl", "Fla", "Flat"])
      page.edit((state) => nameVariant(state, "a", name));
    expect(page.steps()).toBe(2);
    for (const value of [9, 9.2, instrument.bridge.thickness, 9.25])
      page.edit((state) => changeVariant(state, "a", "bridge.thickness", value));
    expect(page.steps()).toBe(3);
    for (const value of [1, 1.2])
      page.edit((state) => aimVariant(state, "a", { kind: "pitch", value }));
    expect(page.steps()).toBe(4);
    page.edit((state) => changeVariant(state, "a", "neck.scale", 640));
    expect(page.steps()).toBe(5);
    page.edit(undo);
    page.edit(undo);
    expect(page.variants()[0]).toEqual({
      id: "a",
      name: "Flat",
      changes: { "bridge.thickness": 9.25 },
    });
  });

  test("one made the base is one act: base and list go back together", () => {
    const page = openPage();
    page.edit((state) => addVariant(state, "a"));
    page.edit((state) => changeVariant(state, "a", "bridge.thickness", 9.5));
    const before = documentIn(page.store.getState());
    page.edit((state) => makeBase(state, "a"));
    expect(page.steps()).toBe(3);
    page.edit(undo);
    expect(documentIn(page.store.getState())).toEqual(before);
    page.edit(redo);
    expect(page.variants()[0]?.name).toBe("Before Variant A");
    expect(page.store.getState().instrument.bridge.thickness).toBe(9.5);
  });

  test("what is plotted is no act, and stays when one is taken back", () => {
    const page = openPage();
    page.edit((state) => addVariant(state, "a"));
    page.edit((state) => plot(state, () => ({ moved: "pitch" })));
    expect(page.steps()).toBe(1);
    page.edit(undo);
    expect(page.store.getState().comparison).toEqual({ ...firstComparison, moved: "pitch" });
  });
});

describe("the record", () => {
  test("a measurement typed letter by letter, unreadable ones too, is one act; its note another", () => {
    const page = openPage();
    for (const text of ["8", "8.", "8.2", "8.2x"])
      page.edit((state) => typeMeasurement(state, "shim", mm(text), day));
    expect(page.steps()).toBe(1);
    for (const note of ["d", "damp"]) page.edit((state) => noteMeasurement(state, "shim", note));
    expect(page.steps()).toBe(2);
    page.edit(undo);
    expect(page.record().readings.shim).toEqual({ value: 8.2, date: day, note: "" });
    page.edit(undo);
    expect(page.store.getState()).toMatchObject({ asBuilt: emptyAsBuilt, readingTexts: {} });
  });

  test("steps in a row are one act, a step of the work done another", () => {
    const page = openPage();
    for (let i = 0; i < 4; i++)
      page.edit((state) => stepMeasurement(state, "gapAfter", 1, 1.7, "mm", day));
    page.edit((state) => markStep(state, "level", day));
    page.edit((state) => markStep(state, "shim", day));
    expect(page.steps()).toBe(3);
    page.edit(undo);
    expect(page.record().done).toEqual({ level: day });
  });

  test("a finish taken back is learnt from no more, and done again it is", () => {
    const page = openPage();
    page.edit((state) => markStep(state, "level", day));
    page.edit((state) => finish(state, day));
    const learnt = page.shop.getState()?.finished;
    expect(learnt).toHaveLength(1);
    page.edit(undo);
    expect(page.shop.getState()?.finished).toEqual([]);
    expect(page.record().finished).toBeNull();
    page.edit(redo);
    expect(page.shop.getState()?.finished).toEqual(learnt);
  });

  test("goes on with acts on the instrument in one history", () => {
    const page = openPage();
    page.edit((state) => stepField(state, "body.length", 1));
    page.edit((state) => markStep(state, "level", day));
    page.edit((state) => addVariant(state, "a"));
    page.edit(undo);
    expect([page.variants().length, page.record().done.level]).toEqual([0, day]);
    page.edit(undo);
    expect(page.record().done).toEqual({});
    expect(page.store.getState().instrument.body.length).toBe(instrument.body.length + 1);
  });
});

test("undo and redo of all of it survive a reload", () => {
  const page = openPage();
  page.edit((state) => addVariant(state, "a"));
  page.edit((state) => markStep(state, "level", day));
  page.edit((state) => stepField(state, "body.length", 1));
  page.edit(undo);
  const storage = memoryStorage();
  writeTabCopy(storage, page.store.getState());
  const again = openPage(readTabCopy(storage));
  again.edit(redo);
  expect(again.store.getState().instrument.body.length).toBe(instrument.body.length + 1);
  again.edit(undo);
  again.edit(undo);
  expect(again.record().done).toEqual({});
  expect(again.variants()).toHaveLength(1);
  again.edit(undo);
  expect(again.variants()).toEqual([]);
});

test("another instrument has neither the variants nor the record of the one before, which come back with it", () => {
  const page = openPage();
  page.edit((state) => addVariant(state, "a"));
  page.edit((state) => markStep(state, "level", day));
  const left = documentIn(page.store.getState());
  page.edit((state) => startFrom(state, instrument, "other"));
  expect(page.variants()).toEqual([]);
  expect(page.record()).toEqual(emptyAsBuilt);
  expect(page.store.getState().previous).toEqual(left);
});
