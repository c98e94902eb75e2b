import { describe, expect, test } from "vitest";
import {
  finish,
  markStep,
  noteMeasurement,
  stepMeasurement,
  typeMeasurement,
} from "../../src/store/document/as-built-edits.ts";
import { type Bench, recordOn } from "../../src/store/document/bench.ts";
import { makeBenchStore } from "../../src/store/document/bench-keep.ts";
import { makeCompareStore } from "../../src/store/document/compare-keep.ts";
import {
  addVariant,
  aimVariant,
  type Comparison,
  changeVariant,
  firstComparison,
  nameVariant,
  removeVariant,
} from "../../src/store/document/comparison.ts";
import { setField, startFrom, stepField } from "../../src/store/document/edits.ts";
import { firstState, type State } from "../../src/store/document/state.ts";
import { makeStore } from "../../src/store/document/store.ts";
import { recorded, redo, undo, workIn } from "../../src/store/document/undo.ts";
import { keep, recall } from "../../src/store/shelf/keep.ts";
import { memoryKeeper } from "./desk.ts";

const { instrument } = firstState;
const { id } = instrument;
const day = "2026-05-14";
const mm = (text: string) => ({ text, units: "mm" }) as const;

function openPage(first: State = firstState) {
  const store = makeStore(first);
  const compare = makeCompareStore(store);
  const bench = makeBenchStore(memoryKeeper(), store);
  const act = (edit: (state: State) => State) =>
    store.setState((state) => recorded(state, edit(state)));
  /** One gesture of the hand: what follows comes in another turn of the page's script. */
  const turn = async (edit: () => void): Promise<void> => {
    edit();
    await Promise.resolve();
  };
  const comparing = (edit: (comparison: Comparison) => Comparison) =>
    turn(() => compare.setState((all) => ({ ...all, [id]: edit(all[id] ?? firstComparison) })));
  const working = (edit: (bench: Bench) => Bench) => turn(() => bench.setState(edit));
  const variants = () => store.getState().comparison.variants;
  const record = () => store.getState().asBuilt;
  const acts = () => store.getState().past.length;
  return { store, compare, bench, act, turn, comparing, working, variants, record, acts };
}

describe("variants", () => {
  test("added, removed, renamed: each is taken back and done again", async () => {
    const page = openPage();
    await page.comparing((all) => addVariant(all, "a"));
    await page.comparing((all) => addVariant(all, "b"));
    await page.comparing((all) => nameVariant(all, "b", "Flat"));
    await page.comparing((all) => removeVariant(all, "a"));
    const seen = [page.variants()];
    while (page.acts() > 0) {
      page.act(undo);
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
      page.act(redo);
      expect(page.variants()).toEqual(seen[i]);
    }
    expect(page.compare.getState()[id]?.variants).toEqual(seen.at(-1));
  });

  test("a name or a number typed letter by letter is one act", async () => {
    const page = openPage();
    await page.comparing((all) => addVariant(all, "a"));
    for (const name of ["F", "Fl", "Fla", "Flat"])
      await page.comparing((all) => nameVariant(all, "a", name));
    expect(page.acts()).toBe(2);
    for (const value of [9, 9.2, instrument.bridge.thickness, 9.25])
      await page.comparing((all) => changeVariant(all, instrument, "a", "bridge.thickness", value));
    expect(page.acts()).toBe(3);
    for (const value of [1, 1.2])
      await page.comparing((all) => aimVariant(all, "a", { kind: "pitch", value }));
    expect(page.acts()).toBe(4);
    await page.comparing((all) => changeVariant(all, instrument, "a", "neck.scale", 640));
    expect(page.acts()).toBe(5);
    page.act(undo);
    page.act(undo);
    expect(page.variants()[0]).toEqual({
      id: "a",
      name: "Flat",
      changes: { "bridge.thickness": 9.25 },
    });
  });

  test("one made the base is one act: base and list go back together", async () => {
    const page = openPage();
    await page.comparing((all) => addVariant(all, "a"));
    const before = workIn(page.store.getState());
    await page.turn(() => {
      page.act((state) => setField(state, "bridge.thickness", 9.5, "promote a"));
      page.compare.setState((all) => ({
        ...all,
        [id]: { ...firstComparison, variants: [{ id: "a", name: "Before", changes: {} }] },
      }));
    });
    expect(page.acts()).toBe(2);
    page.act(undo);
    expect(workIn(page.store.getState())).toEqual(before);
    page.act(redo);
    expect(page.variants()[0]?.name).toBe("Before");
    expect(page.store.getState().instrument.bridge.thickness).toBe(9.5);
  });

  test("what is plotted is no act, and stays when one is taken back", async () => {
    const page = openPage();
    await page.comparing((all) => addVariant(all, "a"));
    await page.comparing((all) => ({ ...all, moved: "pitch" }));
    expect(page.acts()).toBe(1);
    page.act(undo);
    expect(page.store.getState().comparison).toEqual({ ...firstComparison, moved: "pitch" });
  });
});

describe("the record", () => {
  test("a measurement typed letter by letter, unreadable ones too, is one act; its note another", async () => {
    const page = openPage();
    for (const text of ["8", "8.", "8.2", "8.2x"])
      await page.working((bench) => typeMeasurement(bench, id, "shim", mm(text), day));
    expect(page.acts()).toBe(1);
    for (const note of ["d", "damp"])
      await page.working((bench) => noteMeasurement(bench, id, "shim", note));
    expect(page.acts()).toBe(2);
    page.act(undo);
    expect(page.record().readings.shim).toEqual({ value: 8.2, date: day, note: "" });
    page.act(undo);
    expect(page.bench.getState()).toMatchObject({ records: {}, texts: { [id]: {} } });
  });

  test("steps in a row are one act, a step of the work done another", async () => {
    const page = openPage();
    for (let i = 0; i < 4; i++)
      await page.working((bench) => stepMeasurement(bench, id, "gapAfter", 1, 1.7, "mm", day));
    await page.working((bench) => markStep(bench, id, "level", day));
    await page.working((bench) => markStep(bench, id, "shim", day));
    expect(page.acts()).toBe(3);
    page.act(undo);
    expect(page.record().done).toEqual({ level: day });
  });

  test("a finish taken back is learnt from no more, and done again it is", async () => {
    const page = openPage();
    await page.working((bench) => markStep(bench, id, "level", day));
    await page.working((bench) => finish(bench, instrument, day));
    const learnt = page.bench.getState().finished;
    expect(learnt).toHaveLength(1);
    page.act(undo);
    expect(page.bench.getState().finished).toEqual([]);
    expect(page.record().finished).toBeNull();
    page.act(redo);
    expect(page.bench.getState().finished).toEqual(learnt);
  });

  test("goes on with acts on the instrument in one history", async () => {
    const page = openPage();
    page.act((state) => stepField(state, "body.length", 1));
    await Promise.resolve();
    await page.working((bench) => markStep(bench, id, "level", day));
    await page.comparing((all) => addVariant(all, "a"));
    page.act(undo);
    expect([page.variants().length, page.record().done.level]).toEqual([0, day]);
    page.act(undo);
    expect(page.record().done).toEqual({});
    expect(page.store.getState().instrument.body.length).toBe(instrument.body.length + 1);
  });
});

test("undo and redo of all of it survive a reload", async () => {
  const page = openPage();
  await page.comparing((all) => addVariant(all, "a"));
  await page.working((bench) => markStep(bench, id, "level", day));
  page.act((state) => stepField(state, "body.length", 1));
  page.act(undo);
  const keeper = memoryKeeper();
  keep(keeper, page.store.getState());
  const again = openPage(recall(keeper));
  again.act(redo);
  expect(again.store.getState().instrument.body.length).toBe(instrument.body.length + 1);
  again.act(undo);
  again.act(undo);
  expect(again.record().done).toEqual({});
  expect(again.variants()).toHaveLength(1);
  again.act(undo);
  expect(again.variants()).toEqual([]);
});

test("another instrument has neither the variants nor the record of the one before, which come back with it", async () => {
  const page = openPage();
  await page.comparing((all) => addVariant(all, "a"));
  await page.working((bench) => markStep(bench, id, "level", day));
  const left = workIn(page.store.getState());
  page.act((state) => startFrom(state, instrument, "other"));
  expect(page.compare.getState()).toEqual({ other: firstComparison });
  expect(page.bench.getState().records).toEqual({});
  expect(recordOn(page.bench.getState(), "other").done).toEqual({});
  expect(page.store.getState().putAway).toEqual(left);
});
