import type { TargetKind } from "../../instrument/instrument.ts";
import { formatRadius } from "../../instrument/length.ts";
import { targetKindsOf } from "../../instrument/outcome-fields.ts";
import { presets } from "../../instrument/presets.ts";
import { roundIn } from "../../instrument/round-in-inches.ts";
import { introduce } from "../../store/document/choices.ts";
import { setField, startFrom, switchTarget } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { Select } from "../fields/select.tsx";
import { targetChoices } from "../fields/target-choices.ts";
import { addStyles } from "../late-styles.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import styles from "./first-questions.css?inline";

addStyles(styles);

const foot = 304.8;

/** Dishes there are to be had, ft (common practice, no source). */
const dishes = [12, 15, 20, 25, 28, 30, 40, 50].map((feet) => feet * foot);

/** What a first visit is asked: body, dish and target, each answer drawn at once. All else can wait. */
export function FirstQuestions() {
  const { name, dome, target } = useRimwright((state) => state.instrument);
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const dish = dome.dishRadius;
  const body = presets.find((preset) => preset.name === name)?.id ?? null;
  const start = (id: string): void => {
    const preset = presets.find((one) => one.id === id);
    if (preset !== undefined) edit((state) => startFrom(state, roundIn(preset, units), newId()));
  };
  return (
    <section className="first-questions" aria-label="To begin with">
      <Select
        label="Which body?"
        value={body}
        ask="Your own"
        options={presets.map((preset) => [preset.id, preset.name] as const)}
        onChoose={start}
      />
      <Select
        label="Which dish?"
        value={dish}
        ask="None"
        options={dishesWith(dish).map((radius) => [radius, formatRadius(radius, units)] as const)}
        onChoose={(radius) => edit((state) => setField(state, "dome.dishRadius", radius))}
      />
      <Select
        label="What do you want to set?"
        value={target.kind}
        options={targetKindsOf(dome.method).map(
          (kind) => [kind, targetChoices[kind].name] as const,
        )}
        onChoose={(kind: TargetKind) => edit((state) => switchTarget(state, kind))}
      />
      <button type="button" onClick={() => edit(introduce)}>
        Done
      </button>
      <p className="field-note">
        {targetChoices[target.kind].when} Every other number is in the fields, and can wait.
      </p>
    </section>
  );
}

const dishesWith = (radius: number | null): readonly number[] =>
  radius === null || dishes.includes(radius) ? dishes : [...dishes, radius].sort((a, b) => a - b);
