import { beforeEach, describe, expect, test, vi } from "vitest";
import { presets } from "../../../src/instrument/presets.ts";
import { finish, markStep } from "../../../src/store/document/as-built-edits.ts";
import { firstComparison } from "../../../src/store/document/comparison.ts";
import {
  reopenPrevious,
  startFrom,
  stepField,
  typeField,
} from "../../../src/store/document/edits.ts";
import {
  type Document,
  firstState,
  newDocument,
  type State,
} from "../../../src/store/document/state.ts";
import { documentIn, undo } from "../../../src/store/document/undo.ts";
import { addVariant } from "../../../src/store/document/variant-edits.ts";
import { shelfFiles } from "../../../src/store/shelf/export.ts";
import { runImport } from "../../../src/store/shelf/import.ts";
import type { Shelf } from "../../../src/store/shelf/shelf.ts";
import {
  duplicate,
  makeFromModel,
  markKeptModel,
  removeFromShelf,
  renameKept,
  restoreRemoved,
} from "../../../src/store/shelf/shelf-edits.ts";
import { type Entry, entryForm, madeFrom, newEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { editShop } from "../../../src/store/shelf/shop.ts";
import { importPlanOf, openShelf, openTab } from "../../support/tab.ts";

let shelf: Shelf;
beforeEach(async () => {
  ({ shelf } = await openShelf());
});

const day = "2026-05-14";
const { id } = firstState.instrument;

function presetWork(): Document {
  const [preset] = presets;
  if (preset === undefined) throw new Error("no preset");
  const { asBuilt } = newDocument(preset);
  return {
    ...newDocument(preset),
    comparison: addVariant(firstState, "a").comparison,
    asBuilt: { ...asBuilt, done: { level: day }, finished: day },
  };
}
const full = presetWork();
const fullId = full.instrument.id;

async function kept(): Promise<Entry> {
  const saved = await shelf.save(newEntry(full, 5));
  if (!saved.saved) throw new Error("not saved");
  return saved.entry;
}

async function entryOf(one: string): Promise<Entry> {
  const entry = await shelf.open(one);
  if (entry === undefined) throw new Error("not on the shelf");
  return entry;
}

describe("another name", () => {
  test("is given without opening, told to other tabs, and one undo away", async () => {
    await kept();
    const { session, store, tell, edit } = openTab(shelf);
    expect(await renameKept(session, fullId, "Nr. 7")).toBe(true);
    expect(store.getState().instrument.id).toBe(id);
    expect((await shelf.cards())[0]?.name).toBe("Nr. 7");
    expect(tell).toHaveBeenCalledWith({ id: fullId, revision: 2 });
    await session.open(fullId);
    expect(store.getState()).toMatchObject({
      ...full,
      instrument: { ...full.instrument, name: "Nr. 7" },
      lastGood: { ...full.lastGood, name: "Nr. 7" },
    });
    edit(undo);
    expect(documentIn(store.getState())).toEqual(full);
  });

  test("reaches the open one on screen", async () => {
    const { session, store } = openTab(shelf);
    await renameKept(session, id, "On screen");
    expect(store.getState().instrument.name).toBe("On screen");
    await session.flush();
    expect((await entryOf(id)).document.instrument.name).toBe("On screen");
  });

  test("overwrites nothing that another tab saves meanwhile", async () => {
    const entry = await kept();
    const { session } = openTab(shelf);
    const later = { ...full, comparison: firstComparison };
    vi.spyOn(shelf, "open").mockImplementationOnce(async () => {
      await shelf.save({ ...entry, document: later });
      return entry;
    });
    await renameKept(session, fullId, "Nr. 7");
    const { document } = await entryOf(fullId);
    expect(document.comparison).toEqual(firstComparison);
    expect(document.instrument.name).toBe("Nr. 7");
  });

  test("is not given to what is not there", async () => {
    expect(await renameKept(openTab(shelf).session, "none", "x")).toBe(false);
  });
});

describe("a copy", () => {
  test("has the variants and the record under an id of its own, and is not finished", async () => {
    await kept();
    const { session, shop } = openTab(shelf);
    const copy = await duplicate(session, fullId);
    expect(copy?.id).not.toBe(fullId);
    const own = { id: copy?.id, name: `${full.instrument.name}, copy` };
    expect((await entryOf(copy?.id ?? "")).document).toEqual({
      ...full,
      instrument: { ...full.instrument, ...own },
      lastGood: { ...full.lastGood, ...own },
      asBuilt: { ...full.asBuilt, finished: null },
    });
    expect(shop.getState()?.finished).toEqual([]);
    expect((await entryOf(fullId)).document).toEqual(full);
  });

  test("of one whose numbers have no plan has them, and the last that had", async () => {
    const state = typeField(firstState, "dome.flatLength", "480");
    const tab = openTab(shelf, state);
    tab.session.addToShelf();
    const copy = await duplicate(tab.session, id);
    expect(copy?.document.instrument.dome.flatLength).toBe(480);
    expect((await entryOf(copy?.id ?? "")).document).toEqual(copy?.document);
  });
});

describe("a model", () => {
  test("is marked without opening, and is no model again one undo later", async () => {
    await kept();
    const { session, store, edit } = openTab(shelf);
    expect(await markKeptModel(session, fullId, true)).toBe(true);
    expect((await shelf.cards())[0]).toMatchObject({ isModel: true });
    await session.open(fullId);
    expect(store.getState().isModel).toBe(true);
    edit(undo);
    expect(store.getState().isModel).toBe(false);
    await session.flush();
    expect((await shelf.cards())[0]).not.toHaveProperty("isModel");
  });

  test("is what an instrument is made from: measured in nothing, counted, and remembering it through a file", async () => {
    await kept();
    const { session } = openTab(shelf);
    await markKeptModel(session, fullId, true);
    const first = await makeFromModel(session, fullId);
    const second = await makeFromModel(session, fullId);
    const model = { id: fullId, name: full.instrument.name };
    expect(first?.document).toEqual({
      ...newDocument({ ...full.instrument, id: first?.id ?? "", name: `${model.name}, no. 1` }),
      madeFrom: model,
    });
    expect(second?.document.instrument.name).toBe(`${model.name}, no. 2`);
    expect(madeFrom(await shelf.cards(), fullId).map((card) => card.id)).toEqual(
      expect.arrayContaining([first?.id, second?.id]),
    );
    const other = await openShelf();
    const tab = openTab(other.shelf);
    const [file] = await shelfFiles(shelf);
    await runImport(tab.session, await importPlanOf(other.shelf, new Blob([JSON.stringify(file)])));
    expect(madeFrom(await other.shelf.cards(), fullId)).toHaveLength(2);
    expect((await other.shelf.document(fullId))?.isModel).toBe(true);
  });

  test("whose name is as long as a name may be leaves room for the number", async () => {
    const { instrument } = full;
    const long = { ...instrument, name: "x".repeat(200) };
    await shelf.save(newEntry({ ...full, instrument: long, lastGood: long, isModel: true }, 5));
    const made = await makeFromModel(openTab(shelf).session, fullId);
    expect(made?.document.instrument.name).toHaveLength(200);
    expect(made?.document.instrument.name).toMatch(/x, no. 1$/);
  });

  test("that is not on the shelf makes nothing", async () => {
    const { session } = openTab(shelf);
    expect(await makeFromModel(session, "none")).toBeNull();
    expect(await markKeptModel(session, "none", true)).toBe(false);
  });

  test.each([
    [{ model: 1, madeFrom: 5 }, false],
    [{ model: "true", madeFrom: { id: "", name: "x" } }, false],
    [{ model: true, madeFrom: { id: 7, name: "x" } }, true],
  ])("stored as %j is read where it can be", async (stored, isModel) => {
    const { shelf: other, database } = await openShelf();
    const entry = await kept();
    const form = entryForm(entry);
    await database.put("entries", { ...form, work: { ...form.work, ...(stored as object) } });
    expect(await other.document(fullId)).toMatchObject({ isModel, madeFrom: null });
  });
});

describe("what is taken off", () => {
  test("comes back whole, history and what was learnt from it too", async () => {
    const tab = openTab(shelf);
    tab.edit((state) => markStep(state, "level", day));
    tab.edit((state) => finish(state, day));
    await tab.session.flush();
    const [before, learnt] = [await entryOf(id), tab.shop.getState()?.finished ?? []];
    expect(learnt).toHaveLength(1);
    expect(before.history.past).toHaveLength(2);
    const other = openTab(shelf, firstState);
    editShop(other.shop, (shop) => ({ ...shop, finished: learnt }));
    const off = await removeFromShelf(other.session, id);
    expect(await shelf.cards()).toEqual([]);
    expect(other.shop.getState()?.finished).toEqual([]);
    expect(other.tell).toHaveBeenLastCalledWith({ id, revision: -1 });
    if (off === null) throw new Error("not there");
    await restoreRemoved(other.session, off);
    expect(await entryOf(id)).toEqual(before);
    expect(other.shop.getState()?.finished).toEqual(learnt);
  });

  test("does not take the place of what came there since", async () => {
    await kept();
    const { session } = openTab(shelf);
    const off = await removeFromShelf(session, fullId);
    const since = { ...full, comparison: firstComparison };
    await shelf.save(newEntry(since, 9));
    if (off === null) throw new Error("not there");
    await restoreRemoved(session, off);
    expect((await entryOf(fullId)).document).toEqual(since);
    expect(await shelf.cards()).toHaveLength(2);
  });
});

describe("an instrument left for another", () => {
  const longer = (state: State): State => stepField(state, "body.length", 1);

  test("has its own variants and record when it is opened again, and the other none of them", async () => {
    await kept();
    const { session, edit, store } = openTab(shelf);
    edit((state) => addVariant(state, "mine"));
    edit((state) => markStep(state, "shim", day));
    const mine = documentIn(store.getState());
    await session.open(fullId);
    expect(documentIn(store.getState())).toEqual(full);
    await session.open(id);
    expect(documentIn(store.getState())).toEqual(mine);
  });

  test("put back, is the shelf's own again: its next edit is no other tab's", async () => {
    const { session, edit, store } = openTab(shelf);
    edit(longer);
    await session.flush();
    edit((state) => startFrom(state, full.instrument, "fresh"));
    await session.flush();
    edit(reopenPrevious);
    await session.flush();
    edit(longer);
    await session.flush();
    expect(session.state.getState()).toMatchObject({ saving: "saved", conflict: false });
    expect((await entryOf(id)).document).toEqual(documentIn(store.getState()));
  });

  test("while another tab saves it, loses neither: ours is one undo away on the shelf", async () => {
    const [one, two] = [openTab(shelf), openTab(shelf)];
    one.edit(longer);
    two.edit((state) => stepField(state, "shim.contact", 1));
    const ours = documentIn(two.store.getState());
    await one.session.flush();
    two.edit((state) => startFrom(state, full.instrument, "fresh"));
    await two.session.flush();
    const entry = await entryOf(id);
    expect(entry.document).toEqual(documentIn(one.store.getState()));
    expect(entry.history.past.at(-1)).toEqual(ours);
  });

  test("while the browser refuses it, is saved with the next that it takes", async () => {
    const { session, edit, store } = openTab(shelf);
    edit(longer);
    const left = documentIn(store.getState());
    const save = vi.spyOn(shelf, "save").mockRejectedValue(new Error("QuotaExceededError"));
    edit((state) => startFrom(state, full.instrument, "fresh"));
    await session.flush();
    expect(await shelf.cards()).toEqual([]);
    save.mockRestore();
    edit(longer);
    await session.flush();
    expect((await entryOf(id)).document).toEqual(left);
    expect((await entryOf("fresh")).document).toEqual(documentIn(store.getState()));
  });

  test("is not left by opening another while the browser refuses to save it", async () => {
    await kept();
    const { session, edit, store } = openTab(shelf);
    edit(longer);
    vi.spyOn(shelf, "save").mockRejectedValue(new Error("QuotaExceededError"));
    expect(await session.open(fullId)).toBe(false);
    expect(store.getState().instrument.id).toBe(id);
  });
});
