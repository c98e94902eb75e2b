import fc from "fast-check";
import {
  isMeasurementKey,
  measurementField,
} from "../../src/instrument/as-built/measurement-fields.ts";
import { stepIds } from "../../src/instrument/as-built/steps.ts";
import { fieldAt, fieldPaths } from "../../src/instrument/fields.ts";
import { targetKinds } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import {
  finish,
  markStep,
  noteMeasurement,
  noteStep,
  putMeasurement,
  setStrings,
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
  drawCounts,
  firstComparison,
  nameVariant,
  removeVariant,
} from "../../src/store/document/comparison.ts";
import {
  rename,
  setField,
  setTolerances,
  startFrom,
  switchTarget,
  traceOutline,
  typeField,
  writeNotes,
} from "../../src/store/document/edits.ts";
import { firstState, type State } from "../../src/store/document/state.ts";
import { makeStore } from "../../src/store/document/store.ts";
import { recorded, redo, undo } from "../../src/store/document/undo.ts";
import { pear } from "../support/pear.ts";
import { memoryKeeper } from "./desk.ts";

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
const measurement = fc.constantFrom(
  ...["shim", "gapAfter", "contact", "bridgeThickness"].filter(isMeasurementKey),
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
  fc.constant(({ act }: Page) => act((state) => traceOutline(state, pear))),
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
  fc.tuple(measurement, share, day).map(
    ([key, part, on]) =>
      ({ record }: Page) =>
        record((bench, id) =>
          putMeasurement(bench, id, key, at(part, measurementField(key)), "mm", on),
        ),
  ),
  fc.tuple(measurement, words, day).map(
    ([key, text, on]) =>
      ({ record }: Page) =>
        record((bench, id) => typeMeasurement(bench, id, key, { text, units: "mm" }, on)),
  ),
  fc.tuple(measurement, words).map(
    ([key, note]) =>
      ({ record }: Page) =>
        record((bench, id) => noteMeasurement(bench, id, key, note)),
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
export const documents = fc.array(acts, { maxLength: 25 }).map((done) => {
  const page = openPage();
  for (const one of done) one(page);
  return page.store.getState();
});
