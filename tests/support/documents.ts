import fc from "fast-check";
import {
  isMeasurementKey,
  measurementField,
} from "../../src/instrument/as-built/measurement-fields.ts";
import { stepIds } from "../../src/instrument/as-built/steps.ts";
import { domeMethods } from "../../src/instrument/dome-fields.ts";
import type { FieldPath } from "../../src/instrument/fields.ts";
import { fieldAt, fieldPaths } from "../../src/instrument/fields.ts";
import { targetKinds } from "../../src/instrument/outcome-fields.ts";
import { presets } from "../../src/instrument/presets.ts";
import {
  changeString,
  dateMeasurement,
  finish,
  markStep,
  noteMeasurement,
  noteStep,
  putMeasurement,
  stepMeasurement,
  typeMeasurement,
} from "../../src/store/document/as-built-edits.ts";
import { drawCounts } from "../../src/store/document/comparison.ts";
import {
  markModel,
  rename,
  setField,
  setNone,
  setTarget,
  startFrom,
  stepField,
  switchMethod,
  switchTarget,
  typeField,
  writeNotes,
} from "../../src/store/document/edits.ts";
import { stepTarget } from "../../src/store/document/hand-edits.ts";
import { traceOutline } from "../../src/store/document/outline-edits.ts";
import { firstState, type State, undoStep } from "../../src/store/document/state.ts";
import { setTolerances } from "../../src/store/document/tolerance-edits.ts";
import { recorded, redo, undo } from "../../src/store/document/undo.ts";
import {
  addVariant,
  aimVariant,
  changeVariant,
  makeBase,
  nameVariant,
  plot,
  removeVariant,
  restoreVariant,
  switchVariantMethod,
} from "../../src/store/document/variant-edits.ts";
import { pear } from "./pear.ts";
import { roundedCutaway } from "./uneven-bodies.ts";

/** What a hand types into a number's field. */
function wildText(): fc.Arbitrary<string> {
  const figure = fc.oneof(
    fc.double({ noNaN: true }).map(String),
    fc.integer().map(String),
    fc.constantFrom("99999999999", "-0", "−0.00001", "0", "none", "flat", "28'", "19-3/8", "7,5"),
  );
  return fc
    .tuple(figure, fc.constantFrom("", " mm", " in", "°", " ft", "x"))
    .map(([text, unit]) => text + unit);
}

/** One edit of a builder's, of any part of a document. */
type Edit = (state: State) => State;

const words = fc.oneof(
  fc.string({ unit: "grapheme", minLength: 150, maxLength: 300 }),
  wildText(),
  fc.string({ unit: "binary", maxLength: 40 }),
  fc.constantFrom("עוד אחד", "\u202Ex\u200B", "<b>&amp;", "二号", "__proto__", "\uD800", ""),
);
const path = fc.constantFrom(...fieldPaths);
const method = fc.constantFrom(...domeMethods);
const reading = fc.constantFrom(
  ...["shim", "gapAfter", "contact", "bridgeThickness"].filter(isMeasurementKey),
);
const step = fc.constantFrom(...stepIds);
const day = fc.constantFrom("2026-01-31", "2026-02-28");
/** Days, and what a date field half typed, or typed too far, makes of one. */
const typedDay = fc.oneof(
  day,
  fc.constantFrom("0026-05-31", "20266-11-25", "2026-02-30", "112520266", "0999-10-11", ""),
);
/** Any number a text can state, far beyond every field too. */
const wild = fc.oneof(
  fc.constantFrom(99999999999, -1, -0, 1e308, 0.5, Number.NaN, Number.POSITIVE_INFINITY),
  fc.double(),
);
const kind = fc.constantFrom(...targetKinds);
const share = fc.double({ min: 0, max: 1, noNaN: true });
const at = (part: number, { min, max }: { min: number; max: number }): number =>
  min + part * (max - min);
const variantAt = ({ comparison: { variants } }: State, i: number): string =>
  variants[i % (variants.length || 1)]?.id ?? "";

/** Near what it is, so that many of them have a plan, or anywhere at all. */
const numbers: fc.Arbitrary<Edit> = fc
  .tuple(path, share, fc.boolean())
  .map(([of, part, near]) => (state) => {
    const field = fieldAt(of, state.instrument.target.kind);
    const value = near ? field.default * (0.98 + 0.04 * part) : at(part, field);
    return setField(state, of, field.quantity === "count" ? Math.round(value) : value);
  });

function changeAt(state: State, i: number, of: FieldPath, part: number): State {
  const id = variantAt(state, i);
  if (of === "target.value") return aimVariant(state, id, { kind: "pitch", value: part });
  const field = fieldAt(of, "pitch");
  const value = field.quantity === "count" ? field.min : at(part, field);
  const none = part > 0.8 && field.nullWord !== undefined;
  return changeVariant(state, id, of, none ? null : value);
}

const edits: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 6, arbitrary: numbers },
  fc.tuple(path, words).map(
    ([of, text]): Edit =>
      (state) =>
        typeField(state, of, text),
  ),
  words.map(
    (name): Edit =>
      (state) =>
        rename(state, name),
  ),
  words.map(
    (notes): Edit =>
      (state) =>
        writeNotes(state, notes),
  ),
  fc.constantFrom(...targetKinds).map(
    (kind): Edit =>
      (state) =>
        switchTarget(state, kind),
  ),
  method.map(
    (way): Edit =>
      (state) =>
        switchMethod(state, way),
  ),
  fc.tuple(fc.nat(7), method).map(
    ([i, way]): Edit =>
      (state) =>
        switchVariantMethod(state, variantAt(state, i), way),
  ),
  fc.nat(presets.length - 1).map(
    (i): Edit =>
      (state) =>
        startFrom(state, presets[i] ?? state.instrument, `id-${i}`),
  ),
  fc.tuple(path, share).map(
    ([of, part]): Edit =>
      (state) =>
        setTolerances(state, { ...state.instrument.tolerances, [of]: part }),
  ),
  fc.tuple(path, wild).map(
    ([of, plusMinus]): Edit =>
      (state) =>
        setTolerances(state, { ...state.instrument.tolerances, [of]: plusMinus }),
  ),
  fc.tuple(path, wild).map(
    ([of, value]): Edit =>
      (state) =>
        setField(state, of, value),
  ),
  fc.tuple(path, fc.boolean()).map(
    ([of, none]): Edit =>
      (state) =>
        setNone(state, of, none),
  ),
  fc.tuple(path, fc.integer({ min: -10, max: 10 })).map(
    ([of, steps]): Edit =>
      (state) =>
        stepField(state, of, steps),
  ),
  fc.tuple(kind, fc.integer({ min: -10, max: 10 })).map(
    ([of, steps]): Edit =>
      (state) =>
        stepTarget(state, of, steps),
  ),
  fc.tuple(kind, wild).map(
    ([of, value]): Edit =>
      (state) =>
        setTarget(state, of, value),
  ),
  fc.constant<Edit>((state) => traceOutline(state, { bass: pear, treble: null })),
  fc.constantFrom(null, pear).map(
    (bass): Edit =>
      (state) =>
        traceOutline(state, { bass, treble: roundedCutaway.body.tracingTreble ?? null }),
  ),
  wild.map(
    (length): Edit =>
      (state) =>
        traceOutline(state, { bass: pear.map(([x, y]) => [x * length, y]), treble: null }),
  ),
  fc.constant<Edit>((state) => traceOutline(state, { bass: null, treble: null })),
  fc.constant<Edit>(undo),
  fc.constant<Edit>(redo),
  fc.uuid().map(
    (id): Edit =>
      (state) =>
        addVariant(state, id),
  ),
  fc.nat(7).map(
    (i): Edit =>
      (state) =>
        removeVariant(state, variantAt(state, i)),
  ),
  fc.tuple(fc.nat(7), words).map(
    ([i, name]): Edit =>
      (state) =>
        nameVariant(state, variantAt(state, i), name),
  ),
  fc.tuple(fc.nat(7), path, share).map(
    ([i, of, part]): Edit =>
      (state) =>
        changeAt(state, i, of, part),
  ),
  fc.tuple(fc.nat(7), path, wild).map(
    ([i, of, value]): Edit =>
      (state) =>
        changeVariant(state, variantAt(state, i), of, value),
  ),
  fc.tuple(fc.nat(7), kind, wild).map(
    ([i, of, value]): Edit =>
      (state) =>
        aimVariant(state, variantAt(state, i), { kind: of, value }),
  ),
  fc.tuple(fc.nat(7), fc.nat(30)).map(
    ([i, times]): Edit =>
      (state) =>
        Array.from({ length: times }).reduce<State>((so) => makeBase(so, variantAt(so, i)), state),
  ),
  fc.nat(7).map(
    (i): Edit =>
      (state) => {
        const variant = state.comparison.variants[i];
        return variant === undefined
          ? state
          : restoreVariant(removeVariant(state, variant.id), variant, i);
      },
  ),
  fc.constantFrom(...drawCounts).map(
    (draws): Edit =>
      (state) =>
        plot(state, ({ sure }) => ({ sure: { ...sure, draws } })),
  ),
  fc.tuple(reading, share, day).map(
    ([key, part, on]): Edit =>
      (state) =>
        putMeasurement(state, key, at(part, measurementField(key)), "mm", on),
  ),
  fc.tuple(reading, words, day).map(
    ([key, text, on]): Edit =>
      (state) =>
        typeMeasurement(state, key, { text, units: "mm" }, on),
  ),
  fc.tuple(reading, wild, day).map(
    ([key, value, on]): Edit =>
      (state) =>
        putMeasurement(state, key, value, "in", on),
  ),
  fc.tuple(reading, fc.integer({ min: -10, max: 10 }), wild, day).map(
    ([key, steps, expected, on]): Edit =>
      (state) =>
        stepMeasurement(state, key, steps, expected, "in-fraction", on),
  ),
  fc.tuple(reading, typedDay).map(
    ([key, on]): Edit =>
      (state) =>
        dateMeasurement(state, key, on),
  ),
  fc.tuple(reading, words).map(
    ([key, note]): Edit =>
      (state) =>
        noteMeasurement(state, key, note),
  ),
  fc.tuple(step, words).map(
    ([of, note]): Edit =>
      (state) =>
        noteStep(state, of, note),
  ),
  fc.tuple(step, fc.option(typedDay)).map(
    ([of, on]): Edit =>
      (state) =>
        markStep(state, of, on),
  ),
  fc.tuple(words, fc.oneof(share, wild)).map(
    ([note, unitWeight]): Edit =>
      (state) =>
        changeString(state, [{ note: "", unitWeight: null, diameter: null }], 0, {
          note,
          unitWeight,
        }),
  ),
  fc.boolean().map(
    (isModel): Edit =>
      (state) =>
        markModel(state, isModel),
  ),
  fc.tuple(fc.uuid(), words).map(
    ([id, name]): Edit =>
      (state) => ({
        ...state,
        madeFrom: { id, name: name.slice(0, 200) },
        undoStep: undoStep("make from", id),
      }),
  ),
  day.map(
    (on): Edit =>
      (state) =>
        state.asBuilt.finished === null ? finish(state, on) : state,
  ),
);

/** What a builder may have on screen after some edits of any kind. */
export const documents = fc
  .array(edits, { maxLength: 25 })
  .map((done) => done.reduce((state, edit) => recorded(state, edit(state)), firstState));
