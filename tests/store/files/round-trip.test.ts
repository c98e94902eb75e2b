import fc from "fast-check";
import { expect, test } from "vitest";
import { solvedPlan } from "../../../src/store/document/plan.ts";
import { documentIn } from "../../../src/store/document/undo.ts";
import { openAddress, readShareText } from "../../../src/store/files/share.ts";
import { sharedIn } from "../../../src/store/files/shared-address.ts";
import { shelfFileOf } from "../../../src/store/files/shelf-file.ts";
import { readImport, runImport } from "../../../src/store/shelf/import.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { withValidParts } from "../../../src/store/shelf/valid-parts.ts";
import { documents } from "../../support/documents.ts";
import { memoryStorage, openShelf, openTab } from "../../support/tab.ts";

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

test("export then import is identity, half-done numbers, variants and record included", async () => {
  let drafts = 0;
  await fc.assert(
    fc.asyncProperty(documents, async (state) => {
      const [{ shelf }, { shelf: other }] = [await openShelf(), await openShelf()];
      const from = openTab(shelf, state);
      from.session.addToShelf();
      await from.session.flush();
      const { id } = state.instrument;
      const entry = await shelf.open(id);
      expect(plain(entry?.document)).toEqual(plain(documentIn(state)));
      const text = JSON.stringify(shelfFileOf(entry === undefined ? [] : [entry]));
      const reading = await readImport(other, new Blob([text]));
      if (!reading.ok) throw new Error(reading.reason);
      expect(reading.plan.bad).toEqual([]);
      await runImport(openTab(other).session, reading.plan);
      const back = await other.document(id);
      const { texts: _, lastNumbers: __, readingTexts: ___, ...kept } = documentIn(state);
      expect(plain(back)).toMatchObject(plain(kept) as object);
      if (back === undefined) throw new Error("not taken in");
      expect(plain(shelfFileOf([{ document: back }]))).toEqual(JSON.parse(text));
      if (kept.lastGood !== kept.instrument) drafts += 1;
    }),
    { numRuns: 200 },
  );
  expect(drafts).toBeGreaterThan(2);
}, 60_000);

test("what is kept for a reload is identity, texts, acts and what was put away included", () => {
  fc.assert(
    fc.property(documents, (state) => {
      const storage = memoryStorage();
      writeTabCopy(storage, state);
      const back = withValidParts(readTabCopy(storage));
      expect(plain(documentIn(back))).toEqual(plain(documentIn(state)));
      expect(plain([back.past, back.future, back.previous])).toEqual(
        plain([state.past.slice(-40), state.future.slice(0, 40), state.previous]),
      );
    }),
    { numRuns: 100 },
  );
}, 60_000);

test("an address brings back the very instrument, if it has a plan", async () => {
  await fc.assert(
    fc.asyncProperty(documents, async ({ lastGood }) => {
      expect(solvedPlan(lastGood).ok).toBe(true);
      const address = await openAddress(lastGood, "https://rimwright.example/#/sheet");
      const read = await readShareText(sharedIn(new URL(address).hash) ?? "");
      expect(plain(read.ok && read.instrument)).toEqual(plain(lastGood));
    }),
    { numRuns: 100 },
  );
}, 60_000);
