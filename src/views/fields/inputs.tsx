import { type FocusEvent, lazy, Suspense, useState } from "react";
import type { FieldPath } from "../../instrument/field.ts";
import { fieldGroups, isFieldPath } from "../../instrument/fields.ts";
import { FieldGroup } from "./field-group.tsx";
import "./fields.css";
import { HowPanel } from "./how-panel.tsx";
import { NotesField, NotesLine } from "./notes-field.tsx";
import { TargetFields } from "./target-fields.tsx";

const Cautions = lazy(() =>
  import("../cautions.tsx").then(({ Cautions: Body }) => ({ default: Body })),
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
