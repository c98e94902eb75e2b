import fc from "fast-check";
import { expect, test } from "vitest";
import { isReadingKey, readingField } from "../../src/instrument/as-built-fields.ts";
import { fieldAt, fieldPaths } from "../../src/instrument/fields.ts";
import { targetKinds } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { stepIds } from "../../src/instrument/steps.ts";
import {
  finish,
  markStep,
  noteReading,
  noteStep,
  putReading,
  setStrings,
  typeReading,
} from "../../src/store/as-built-edits.ts";
import { type Bench, recordOn } from "../../src/store/bench.ts";
import { makeBenchStore } from "../../src/store/bench-keep.ts";
import {
  addVariant,
  aimVariant,
  type Comparison,
  changeVariant,
  drawCounts,
  firstComparison,
  nameVariant,
  removeVariant,
} from "../../src/store/compare.ts";
import { makeCompareStore } from "../../src/store/compare-keep.ts";
import {
  rename,
  setField,
  startFrom,
  switchTarget,
  typeField,
  writeNotes,
} from "../../src/store/edits.ts";
import { readIntake, takeIn } from "../../src/store/intake.ts";
import { keep, recall } from "../../src/store/keep.ts";
import { planOf } from "../../src/store/plan.ts";
import { openAddress, readShareText } from "../../src/store/share.ts";
import { sharedIn } from "../../src/store/shared-address.ts";
import { shelfFileOf } from "../../src/store/shelf-file.ts";
import { firstState, type State } from "../../src/store/state.ts";
import { makeStore } from "../../src/store/store.ts";
import { setTolerances } from "../../src/store/tolerances.ts";
import { traceOutline } from "../../src/store/tracing.ts";
import { recorded, redo, undo, workIn } from "../../src/store/undo.ts";
import { memoryKeeper, openShelf, openTab } from "./desk.ts";

/** One act of a builder's on any part of a document. */
type Act = (page: Page) => void;
type Page = ReturnType<typeof openPage>;

function openPage() {
  const store = makeStore(firstState);
  const [bench, compare] = [makeBenchStore(memoryKeeper(), store), makeCompareStore(store)];
  return {
    store,
    act: (edit: (state: State) => State) => store.setState((state) => recorded(state, edit(state))),
    record: (edit: (bench: Bench, id: string) => Bench) =>
      bench.setState((all) => edit(all, store.getState().instrument.id)),
    compare: (edit: (comparison: Comparison) => Comparison) =>
      compare.setState((all) => {
        const { id } = store.getState().instrument;
        return { ...all, [id]: edit(all[id] ?? firstComparison) };
      }),
  };
}

const words = fc.oneof(
  fc.string({ unit: "binary", maxLength: 40 }),
  fc.constantFrom("עוד אחד", "\u202Ex\u200B", "<b>&amp;", "二号", "__proto__", "\uD800", ""),
);
const path = fc.constantFrom(...fieldPaths);
const reading = fc.constantFrom(
  ...["shim", "gapAfter", "contact", "bridgeThickness"].filter(isReadingKey),
);
const step = fc.constantFrom(...stepIds);
const day = fc.constantFrom("2026-01-31", "2026-02-28");
const share = fc.double({ min: 0, max: 1, noNaN: true });
const at = (part: number, { min, max }: { min: number; max: number }): number =>
  min + part * (max - min);
const variantAt = ({ variants }: Comparison, i: number): string =>
  variants[i % (variants.length || 1)]?.id ?? "";

/** Near what it is, so that many of them have a plan, or anywhere at all. */
const numbers: fc.Arbitrary<Act> = fc.tuple(path, share, fc.boolean()).map(
  ([of, part, near]) =>
    ({ act }) =>
      act((state) => {
        const field = fieldAt(of, state.instrument.target.kind);
        const value = near ? field.default * (0.98 + 0.04 * part) : at(part, field);
        return setField(state, of, field.quantity === "count" ? Math.round(value) : value);
      }),
);

const acts: fc.Arbitrary<Act> = fc.oneof(
  { weight: 6, arbitrary: numbers },
  fc.tuple(path, words).map(
    ([of, text]) =>
      ({ act }: Page) =>
        act((state) => typeField(state, of, text)),
  ),
  words.map(
    (name) =>
      ({ act }: Page) =>
        act((state) => rename(state, name)),
  ),
  words.map(
    (notes) =>
      ({ act }: Page) =>
        act((state) => writeNotes(state, notes)),
  ),
  fc.constantFrom(...targetKinds).map(
    (kind) =>
      ({ act }: Page) =>
        act((state) => switchTarget(state, kind)),
  ),
  fc.nat(presets.length - 1).map(
    (i) =>
      ({ act }: Page) =>
        act((state) => startFrom(state, presets[i] ?? state.instrument, `id-${i}`)),
  ),
  fc.tuple(path, share).map(
    ([of, part]) =>
      ({ act }: Page) =>
        act((state) => setTolerances(state, { ...state.instrument.tolerances, [of]: part })),
  ),
  fc.constant(({ act }: Page) =>
    act((state) =>
      traceOutline(state, [
        [0, 0],
        [5, 60],
        [40, 140],
        [120, 185],
        [220, 165],
        [350, 110],
        [450, 60],
        [500, 34],
      ]),
    ),
  ),
  fc.constant(({ act }: Page) => act(undo)),
  fc.constant(({ act }: Page) => act(redo)),
  fc.uuid().map(
    (id) =>
      ({ compare }: Page) =>
        compare((all) => addVariant(all, id)),
  ),
  fc.nat(7).map(
    (i) =>
      ({ compare }: Page) =>
        compare((all) => removeVariant(all, variantAt(all, i))),
  ),
  fc.tuple(fc.nat(7), words).map(
    ([i, name]) =>
      ({ compare }: Page) =>
        compare((all) => nameVariant(all, variantAt(all, i), name)),
  ),
  fc.tuple(fc.nat(7), path, share).map(
    ([i, of, part]) =>
      ({ compare, store }: Page) =>
        compare((all) => {
          if (of === "target.value")
            return aimVariant(all, variantAt(all, i), { kind: "pitch", value: part });
          const field = fieldAt(of, "pitch");
          const value = field.quantity === "count" ? field.min : at(part, field);
          const none = part > 0.8 && field.nullWord !== undefined;
          return changeVariant(
            all,
            store.getState().instrument,
            variantAt(all, i),
            of,
            none ? null : value,
          );
        }),
  ),
  fc.constantFrom(...drawCounts).map(
    (draws) =>
      ({ compare }: Page) =>
        compare((all) => ({
          ...all,
          sure: { ...all.sure, draws },
          family: { ...all.family, chosen: ["a"] },
        })),
  ),
  fc.tuple(reading, share, day).map(
    ([key, part, on]) =>
      ({ record }: Page) =>
        record((bench, id) => putReading(bench, id, key, at(part, readingField(key)), "mm", on)),
  ),
  fc.tuple(reading, words, day).map(
    ([key, text, on]) =>
      ({ record }: Page) =>
        record((bench, id) => typeReading(bench, id, key, { text, units: "mm" }, on)),
  ),
  fc.tuple(reading, words).map(
    ([key, note]) =>
      ({ record }: Page) =>
        record((bench, id) => noteReading(bench, id, key, note)),
  ),
  fc.tuple(step, words).map(
    ([of, note]) =>
      ({ record }: Page) =>
        record((bench, id) => noteStep(bench, id, of, note)),
  ),
  fc.tuple(step, fc.option(day)).map(
    ([of, on]) =>
      ({ record }: Page) =>
        record((bench, id) => markStep(bench, id, of, on)),
  ),
  fc.tuple(words, share).map(
    ([note, unitWeight]) =>
      ({ record }: Page) =>
        record((bench, id) =>
          setStrings(bench, id, [{ note: note.slice(0, 20), unitWeight, diameter: null }]),
        ),
  ),
  day.map(
    (on) =>
      ({ record, store }: Page) =>
        record((bench, id) =>
          recordOn(bench, id).finished === null
            ? finish(bench, store.getState().lastGood, on)
            : bench,
        ),
  ),
);

/** What a builder may have on screen after some acts of any kind. */
const documents = fc.array(acts, { maxLength: 25 }).map((done) => {
  const page = openPage();
  for (const one of done) one(page);
  return page.store.getState();
});

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

test("export then import is identity, half-done numbers, variants and record included", async () => {
  let drafts = 0;
  await fc.assert(
    fc.asyncProperty(documents, async (state) => {
      const [{ shelf }, { shelf: other }] = [await openShelf(), await openShelf()];
      const from = openTab(shelf, state);
      from.session.keep();
      await from.session.flush();
      const { id } = state.instrument;
      const entry = await shelf.open(id);
      expect(plain(entry?.work)).toEqual(plain(workIn(state)));
      const text = JSON.stringify(shelfFileOf(entry === undefined ? [] : [entry]));
      const reading = await readIntake(other, new Blob([text]));
      if (!reading.ok) throw new Error(reading.reason);
      expect(reading.intake.bad).toEqual([]);
      await takeIn(openTab(other).session, reading.intake);
      const back = await other.look(id);
      const { texts: _, setAside: __, readingTexts: ___, ...kept } = workIn(state);
      expect(plain(back)).toMatchObject(plain(kept) as object);
      if (back === undefined) throw new Error("not taken in");
      expect(JSON.stringify(shelfFileOf([{ work: back }]))).toBe(text);
      if (kept.lastGood !== kept.instrument) drafts += 1;
    }),
    { numRuns: 100 },
  );
  expect(drafts).toBeGreaterThan(10);
}, 60_000);

test("what is kept for a reload is identity, texts, acts and what was put away included", () => {
  fc.assert(
    fc.property(documents, (state) => {
      const keeper = memoryKeeper();
      keep(keeper, state);
      const back = recall(keeper);
      expect(plain(workIn(back))).toEqual(plain(workIn(state)));
      expect(plain([back.past, back.future, back.putAway])).toEqual(
        plain([state.past.slice(-40), state.future.slice(0, 40), state.putAway]),
      );
    }),
    { numRuns: 100 },
  );
}, 60_000);

test("an address brings back the very instrument, if it has a plan", async () => {
  await fc.assert(
    fc.asyncProperty(documents, async ({ lastGood }) => {
      expect(planOf(lastGood).ok).toBe(true);
      const address = await openAddress(lastGood, "https://rimwright.example/#/sheet");
      const read = await readShareText(sharedIn(new URL(address).hash) ?? "");
      expect(plain(read.ok && read.instrument)).toEqual(plain(lastGood));
    }),
    { numRuns: 100 },
  );
}, 60_000);
