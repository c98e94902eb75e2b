import "./fields.css";
import { type FocusEvent, type ReactNode, useState } from "react";
import type { FieldGroup as FieldGroupName, FieldPath } from "../../instrument/fields.ts";
import { appliesTo, fieldGroups, isFieldPath, pathsIn } from "../../instrument/fields.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { writeNotes } from "../../store/document/edits.ts";
import { latePart } from "../late-part.tsx";
import { useEdit, useRimwright } from "../store-context.ts";
import { FieldGroup } from "./field-group.tsx";
import { FieldRow } from "./field-row.tsx";
import { HowPanel } from "./how-panel.tsx";
import { MethodFields } from "./method-fields.tsx";
import { TargetFields } from "./target-fields.tsx";

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

const Cautions = latePart({
  what: "The list of cautions",
  load: () => import("./cautions.tsx").then(({ Cautions }) => Cautions),
});
const ToleranceFields = latePart({
  what: "The list of tolerances",
  load: () => import("./tolerance-fields.tsx").then(({ ToleranceFields }) => ToleranceFields),
});

const benchPaths = pathsIn("bench").filter((path) => path !== "target.value");

/** What is changed most, of what shapes anything with the method chosen. */
function BenchFields() {
  const method = useRimwright((state) => state.instrument.dome.method);
  return (
    <>
      <TargetFields />
      {benchPaths
        .filter((path) => appliesTo(path, method))
        .map((path) => (
          <FieldRow key={path} path={path} />
        ))}
      <MethodFields />
    </>
  );
}

/** What stands in a group where it is more than its fields. */
const insides: Readonly<Partial<Record<FieldGroupName, ReactNode>>> = {
  bench: <BenchFields />,
  tolerances: <ToleranceFields />,
};

/** What is changed most first, with the question the shim answers; then the instrument, part by part. */
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
        {fieldGroups.map(([group, heading]) => (
          <FieldGroup key={group} group={group} heading={heading}>
            {insides[group]}
          </FieldGroup>
        ))}
        <NotesField />
        <Cautions />
      </section>
    </>
  );
}
