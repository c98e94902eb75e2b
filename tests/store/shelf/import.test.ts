import { describe, expect, test, vi } from "vitest";
import { stepIds } from "../../../src/instrument/as-built/steps.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { typeField } from "../../../src/store/document/edits.ts";
import { type Document, firstState, newDocument } from "../../../src/store/document/state.ts";
import { documentIn, undo } from "../../../src/store/document/undo.ts";
import { addVariant } from "../../../src/store/document/variant-edits.ts";
import { fileLimits, shelfFileOf } from "../../../src/store/files/shelf-file.ts";
import { oneFile, shelfFiles } from "../../../src/store/shelf/export.ts";
import { choose, runImport } from "../../../src/store/shelf/import.ts";
import type { Shelf } from "../../../src/store/shelf/shelf.ts";
import { type Entry, isInNoFile, newEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { importPlanOf, openShelf, openTab } from "../../support/tab.ts";

function presetAt(i: number) {
  const found = presets[i];
  if (found === undefined) throw new Error("no preset");
  return found;
}
const [preset, another] = [presetAt(0), presetAt(1)];

const file = (json: unknown): Blob => new Blob([JSON.stringify(json)]);
const fileOf = (...documents: readonly Document[]): Blob =>
  file(shelfFileOf(documents.map((document) => ({ document }))));

/** An instrument with variants and a record. */
const full: Document = {
  ...newDocument(preset),
  comparison: addVariant(firstState, "a").comparison,
  asBuilt: {
    ...newDocument(preset).asBuilt,
    done: { level: "2026-05-14" },
    finished: "2026-06-01",
  },
};

async function kept(shelf: Shelf, document: Document): Promise<Entry> {
  const saved = await shelf.save(newEntry(document, 5));
  if (!saved.saved) throw new Error("not saved");
  return saved.entry;
}

describe("a file", () => {
  test("brings variants and record in with the instrument, and a finished one is learnt from", async () => {
    const { shelf } = await openShelf();
    const { session, shop } = openTab(shelf);
    const done = await runImport(
      session,
      await importPlanOf(shelf, fileOf(full, newDocument(another))),
    );
    expect(done).toEqual({ added: 2, replaced: 0, skipped: 0, same: 0, sticks: 0, bad: [] });
    expect(await shelf.document(preset.id)).toEqual(full);
    expect(shop.getState()?.finished).toEqual([
      { instrument: full.instrument, asBuilt: full.asBuilt, invented: false },
    ]);
  });

  test("taken in twice changes nothing", async () => {
    const { shelf } = await openShelf();
    const { session } = openTab(shelf);
    await runImport(session, await importPlanOf(shelf, fileOf(full)));
    const before = await shelf.open(preset.id);
    const again = await importPlanOf(shelf, fileOf(full));
    expect(again).toEqual({ fresh: [], same: 1, clashes: [], sticks: [], bad: [] });
    await runImport(session, again);
    expect(await shelf.open(preset.id)).toEqual(before);
  });

  test("with numbers that have no plan brings them in beside the last that had one", async () => {
    const state = typeField(firstState, "dome.flatLength", "480");
    expect(state.lastGood).not.toBe(state.instrument);
    const { shelf } = await openShelf();
    const [document] = (await importPlanOf(shelf, fileOf(documentIn(state)))).fresh;
    expect(document).toEqual({ ...documentIn(state), texts: {} });
    const alone = await importPlanOf(shelf, file(state.instrument));
    expect(alone.fresh).toEqual([]);
    expect(alone.bad).toHaveLength(1);
    expect(alone.bad[0]?.reason).not.toBe("");
  });

  test("holding one instrument twice brings the second in once it differs", async () => {
    const { shelf } = await openShelf();
    const { session } = openTab(shelf);
    const renamed = { ...full, asBuilt: newDocument(preset).asBuilt };
    const plan = await importPlanOf(shelf, fileOf(full, full, renamed));
    expect(plan).toMatchObject({ same: 1, clashes: [] });
    expect((await runImport(session, plan)).added).toBe(2);
    expect(await shelf.document(preset.id)).toEqual(full);
  });
});

describe("an instrument the shelf has otherwise", () => {
  const other: Document = { ...newDocument({ ...preset, name: "Another" }), asBuilt: full.asBuilt };

  async function asked() {
    const { shelf, database } = await openShelf();
    const entry = await kept(shelf, full);
    return {
      shelf,
      database,
      entry,
      plan: await importPlanOf(shelf, fileOf(other, newDocument(another))),
    };
  }

  test("is a question, told in what they differ; nothing is written before it is answered", async () => {
    const { shelf, entry, plan } = await asked();
    expect(plan.fresh).toHaveLength(1);
    expect(plan.clashes).toEqual([
      {
        path: "instruments[0]",
        document: other,
        kept: { name: preset.name, savedAt: 5, revision: 1 },
        differs: ["numbers", "variants"],
        choice: "both",
      },
    ]);
    expect(await shelf.open(preset.id)).toEqual(entry);
    expect(await shelf.cards()).toHaveLength(1);
  });

  test("stands beside it when nothing is chosen", async () => {
    const { shelf, entry, plan } = await asked();
    const { session } = openTab(shelf);
    expect(await runImport(session, plan)).toMatchObject({ added: 2, replaced: 0 });
    expect(await shelf.open(preset.id)).toEqual(entry);
    const beside = (await shelf.cards()).find(({ name }) => name === "Another");
    expect((await shelf.document(beside?.id ?? ""))?.asBuilt).toEqual(other.asBuilt);
  });

  test("replaces it when told to, the replaced one undo away and other tabs told", async () => {
    const { shelf, plan } = await asked();
    const { session, tell } = openTab(shelf);
    const chosen = choose(plan, "instruments[0]", "replace");
    expect(await runImport(session, chosen)).toMatchObject({ added: 1, replaced: 1 });
    const entry = await shelf.open(preset.id);
    expect(entry).toMatchObject({ revision: 2, document: other, history: { past: [full] } });
    expect(tell).toHaveBeenCalledWith(expect.objectContaining({ id: preset.id, revision: 2 }));
  });

  test("is shown at once when it is the one on screen, and undo shows the one before", async () => {
    const { shelf } = await openShelf();
    const tab = openTab(shelf, { ...firstState, ...full });
    tab.session.addToShelf();
    await tab.session.flush();
    const plan = choose(await importPlanOf(shelf, fileOf(other)), null, "replace");
    await runImport(tab.session, plan);
    expect(tab.store.getState().instrument.name).toBe("Another");
    tab.edit(undo);
    expect(documentIn(tab.store.getState())).toEqual(full);
  });

  test("is left out when told to", async () => {
    const { shelf, entry, plan } = await asked();
    const { session } = openTab(shelf);
    expect(await runImport(session, choose(plan, null, "skip"))).toMatchObject({
      added: 1,
      skipped: 1,
    });
    expect(await shelf.open(preset.id)).toEqual(entry);
    expect(await shelf.cards()).toHaveLength(2);
  });

  test("is not replaced where another tab has saved it since the question: both are kept", async () => {
    const { shelf, entry, plan } = await asked();
    const { session } = openTab(shelf);
    await shelf.save({ ...entry, document: { ...full, asBuilt: newDocument(preset).asBuilt } });
    const theirs = await shelf.open(preset.id);
    const done = await runImport(session, choose(plan, null, "replace"));
    expect(done).toMatchObject({ added: 2, replaced: 0 });
    expect(await shelf.open(preset.id)).toEqual(theirs);
  });

  test("nothing at all is written where the browser refuses a part of it", async () => {
    const { shelf, database, plan } = await asked();
    const { session } = openTab(shelf);
    const { put: whole } = IDBObjectStore.prototype;
    const put = vi.spyOn(IDBObjectStore.prototype, "put");
    put.mockImplementationOnce(whole).mockImplementation(() => {
      throw new DOMException("full", "QuotaExceededError");
    });
    await expect(runImport(session, plan)).rejects.toThrow("full");
    put.mockRestore();
    expect(await shelf.cards()).toHaveLength(1);
    expect(await database.getAll("entries")).toHaveLength(1);
  });
});

describe("the shelf as files", () => {
  test("notes what is in a file until it changes again", async () => {
    const { shelf } = await openShelf();
    const entry = await kept(shelf, full);
    await kept(shelf, newDocument(another));
    const inNone = async () => (await shelf.cards()).filter(isInNoFile).map(({ id }) => id);
    expect(await inNone()).toHaveLength(2);
    await oneFile(shelf, preset.id);
    expect(await inNone()).toEqual([another.id]);
    await shelfFiles(shelf);
    expect(await inNone()).toEqual([]);
    await shelf.save({ ...entry, savedAt: 9 });
    expect(await inNone()).toEqual([preset.id]);
  });

  test("are as many as it takes for each to be taken in again, and lose nothing", async () => {
    const { shelf } = await openShelf();
    const asBuilt = {
      ...newDocument(preset).asBuilt,
      notes: Object.fromEntries(stepIds.map((step) => [step, "板".repeat(2000)])),
    };
    const documents = Array.from({ length: 120 }, (_, i) => ({
      ...newDocument({ ...preset, id: `id-${i}`, name: `No. ${i}` }),
      asBuilt,
    }));
    await shelf.add(
      documents.map((document) => ({ entry: newEntry(document, 1), replaces: null })),
    );
    const files = await shelfFiles(shelf);
    expect(files.length).toBe(2);
    const back = await openShelf();
    const { session } = openTab(back.shelf);
    for (const one of files) {
      const blob = new Blob([JSON.stringify(one, null, 1)]);
      expect(blob.size).toBeLessThan(fileLimits.bytes);
      await runImport(session, await importPlanOf(back.shelf, blob));
    }
    for (const document of documents)
      expect(await back.shelf.document(document.instrument.id)).toEqual(document);
  }, 30_000);
});

test("names in a file that are no field's are told, with the one that was meant", async () => {
  const { shelf } = await openShelf();
  const plan = await importPlanOf(shelf, file({ name: "Misspelt", body: { backRadiuss: 4000 } }));
  expect(plan.fresh).toHaveLength(1);
  expect(plan.bad).toEqual([
    { path: "body.backRadiuss", reason: "No field has this name; body.backRadius is one." },
  ]);
});
