import "./fields.css";
import { type FocusEvent, lazy, Suspense, useState } from "react";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldGroups, isFieldPath } from "../../instrument/fields.ts";
import { targetFields, targetKinds } from "../../instrument/outcome-fields.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { switchTarget, writeNotes } from "../../store/document/edits.ts";
import { rangePhrase } from "../../store/document/plan.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import { FieldGroup } from "./field-group.tsx";
import { FieldRow } from "./field-row.tsx";
import { HowPanel } from "./how-panel.tsx";

function NotesField() {
  const notes = useRimwright((state) => state.instrument.notes);
  const edit = useEdit();
  return (
    <section className="group">
      <h2>
        <label htmlFor="notes">Notes</label>
      </h2>
      <textarea
        id="notes"
        rows={4}
        maxLength={textLimits.notes}
        value={notes}
        onChange={({ target }) => edit((state) => writeNotes(state, target.value))}
      />
    </section>
  );
}

/** The notes where they are seen first: an invented instrument says there that it is one. */
function NotesLine() {
  const notes = useRimwright((state) => state.instrument.notes);
  return notes === "" ? null : <p className="notes-line">{notes}</p>;
}

/** Which outcome the shim is found for. The choice itself moves nothing: the next target starts at what is now. */
function TargetFields() {
  const kind = useRimwright((state) => state.instrument.target.kind);
  const edit = useEdit();
  return (
    <>
      <fieldset className="target-kinds">
        <legend className="target-ask">Find the shim that gives this</legend>
        {targetKinds.map((choice) => (
          <label key={choice} className="target-kind">
            <input
              type="radio"
              className="tick"
              name="target-kind"
              checked={kind === choice}
              onChange={() => edit((state) => switchTarget(state, choice))}
            />
            {choice === "shim" ? "Shim itself, as stated" : targetFields[choice].label}
          </label>
        ))}
      </fieldset>
      <FieldRow path="target.value" />
      <Reach />
    </>
  );
}

/** The range of the present target for this instrument. */
function Reach() {
  const units = useRimwright((state) => state.choices.units);
  const target = useRimwright((state) => state.instrument.target);
  const plan = usePlan();
  if (plan === null) return null;
  const range = rangePhrase(plan.instrument, "target.value", plan.profile.reachable[target.kind]);
  return <p className="reach">This instrument can be given {sayPhrase(range, units)}.</p>;
}

const Cautions = lazy(() =>
  import("./cautions.tsx").then(({ Cautions: Body }) => ({ default: Body })),
);
const ToleranceFields = lazy(() =>
  import("./tolerance-fields.tsx").then(({ ToleranceFields: Body }) => ({ default: Body })),
);

const groups = fieldGroups.filter(([group]) => group !== "target" && group !== "tolerances");

/** The question first, then the instrument as a builder takes it in hand. */
export function Inputs() {
  const [focused, setFocused] = useState<FieldPath | null>(null);
  const onFocus = ({ target }: FocusEvent): void => {
    if (target instanceof HTMLInputElement && isFieldPath(target.name)) setFocused(target.name);
  };
  return (
    <>
      <HowPanel path={focused} />
      <section className="inputs" aria-label="Measurements" onFocus={onFocus}>
        <NotesLine />
        <FieldGroup group="target" heading="Target">
          <TargetFields />
        </FieldGroup>
        {groups.map(([group, heading]) => (
          <FieldGroup key={group} group={group} heading={heading} />
        ))}
        <FieldGroup group="tolerances" heading="Tolerances">
          <Suspense>
            <ToleranceFields />
          </Suspense>
        </FieldGroup>
        <NotesField />
        <Suspense>
          <Cautions />
        </Suspense>
      </section>
    </>
  );
}
