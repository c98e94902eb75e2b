import { useState } from "react";
import { domeMethods } from "../../instrument/dome-fields.ts";
import { fieldFigure, unitAfter } from "../../instrument/field-text.ts";
import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Instrument, TargetKind } from "../../instrument/instrument.ts";
import { targetFields, targetKindsOf } from "../../instrument/outcome-fields.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import type { Variant } from "../../profile/comparison/variant.ts";
import { targetIn } from "../../profile/outcome.ts";
import { stepField, switchMethod, switchTarget, typeField } from "../../store/document/edits.ts";
import { fieldTrouble, readText, shownText } from "../../store/document/field-view.ts";
import { solvedPlan } from "../../store/document/plan.ts";
import type { TypedText } from "../../store/document/state.ts";
import { stepped } from "../../store/document/step.ts";
import {
  aimVariant,
  changeVariant,
  switchVariantMethod,
} from "../../store/document/variant-edits.ts";
import { methodNames } from "../fields/method-fields.tsx";
import { NumberEntry } from "../fields/number-entry.tsx";
import { Select } from "../fields/select.tsx";
import { useEdit, useRimwright } from "../store-context.ts";

/** A number of the base, edited where it stands. */
export function BaseCell({ path }: { readonly path: FieldPath }) {
  const kind = useRimwright((state) => state.instrument.target.kind);
  const units = useRimwright((state) => state.choices.units);
  const text = useRimwright((state) => shownText(state, path));
  const trouble = useRimwright((state) => fieldTrouble(state, path));
  const edit = useEdit();
  const field = fieldAt(path, kind);
  return (
    <CellEntry
      label={`${field.label}, base`}
      text={text}
      unit={unitAfter(text, field, units)}
      trouble={trouble === null ? null : sayPhrase(trouble.why, units)}
      onText={(typed) => edit((state) => typeField(state, path, typed))}
      onStep={(steps) => edit((state) => stepField(state, path, steps))}
    />
  );
}

interface Props {
  readonly path: FieldPath;
  readonly variant: Variant;
  readonly instrument: Instrument;
}

/** A number of a variant: the base's, until it is changed. */
export function ChangeCell({ path, variant, instrument }: Props) {
  const base = useRimwright((state) => state.instrument);
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const [typed, setTyped] = useState<TypedText | null>(null);
  const { kind } = instrument.target;
  const field = fieldAt(path, kind);
  const value = readField(instrument, path);
  const read = typed === null ? null : readText(path, kind, typed);
  // The text as typed, while it still says what the variant has, or nothing that can be read.
  const says = read?.ok === true && typed?.units === units && read.value === value;
  const kept = read?.ok === false || says ? typed : null;
  const set = (next: number | null): void =>
    edit((state) =>
      path === "target.value"
        ? aimVariant(state, variant.id, next === null ? null : { kind, value: next })
        : changeVariant(state, variant.id, path, next),
    );
  const onText = (text: string): void => {
    const now = { text, units };
    setTyped(now);
    const stated = readText(path, kind, now);
    if (stated.ok) set(stated.value);
  };
  const text = kept === null ? fieldFigure(value, field, units) : kept.text;
  return (
    <CellEntry
      label={`${field.label}, ${variant.name}`}
      text={text}
      unit={unitAfter(text, field, units)}
      same={value === readField(base, path)}
      trouble={read === null || read.ok ? null : sayPhrase(read.why, units)}
      onText={onText}
      onStep={(steps) => {
        if (value === null) return;
        setTyped(null);
        set(stepped(value, field, units, steps));
      }}
    />
  );
}

interface ColumnProps {
  /** Null for the base. */
  readonly variant: Variant | null;
  readonly instrument: Instrument;
}

/** Where a column's flat is sanded: on the rim, or on the glued top. */
export function MethodCell({ variant, instrument }: ColumnProps) {
  const edit = useEdit();
  return (
    <Select
      label={`Where the flat is sanded, ${variant === null ? "base" : variant.name}`}
      labelUnseen
      value={instrument.dome.method}
      options={domeMethods.map((method) => [method, methodNames[method].short])}
      onChoose={(method) =>
        edit((state) =>
          variant === null
            ? switchMethod(state, method)
            : switchVariantMethod(state, variant.id, method),
        )
      }
    />
  );
}

/** What a column aims for, and how much of it. Another kind starts at the value it has now. */
export function AimCell({ variant, instrument }: ColumnProps) {
  const edit = useEdit();
  const { kind } = instrument.target;
  const aim = (next: TargetKind): void => {
    if (variant === null) {
      edit((state) => switchTarget(state, next));
      return;
    }
    const plan = solvedPlan(instrument);
    const value = (plan.ok ? targetIn(plan.profile, next) : null) ?? targetFields[next].default;
    edit((state) => aimVariant(state, variant.id, { kind: next, value }));
  };
  return (
    <div className="aim">
      <Select
        label={`Aims for, ${variant === null ? "base" : variant.name}`}
        labelUnseen
        value={kind}
        options={targetKindsOf(instrument.dome.method).map((one) => [one, targetFields[one].label])}
        onChoose={aim}
      />
      {variant === null ? (
        <BaseCell path="target.value" />
      ) : (
        <ChangeCell path="target.value" variant={variant} instrument={instrument} />
      )}
    </div>
  );
}

interface CellEntryProps {
  readonly label: string;
  readonly text: string;
  readonly unit: string;
  /** Whether it is the base's own value. */
  readonly same?: boolean;
  readonly trouble: string | null;
  readonly onText: (text: string) => void;
  readonly onStep: (steps: number) => void;
}

/** A number to type or to step, with what is wrong with it. */
function CellEntry(props: CellEntryProps) {
  const { label, text, unit, same, trouble, onText, onStep } = props;
  return (
    <div className="cell-entry" data-same={same ? "" : undefined}>
      <NumberEntry {...{ label, text, unit, onText, onStep }} invalid={trouble !== null} />
      {trouble !== null && (
        <p className="cell-trouble" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}
