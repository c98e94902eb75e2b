import { anglePart, targetKindsOf } from "../../instrument/outcome-fields.ts";
import { switchTarget } from "../../store/document/edits.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { FieldRow } from "./field-row.tsx";
import { targetChoices } from "./target-choices.ts";

/** Which outcome the shim (or spacer) is found for. The choice itself moves nothing: the next target starts at what is now. */
export function TargetFields() {
  const kind = useRimwright((state) => state.instrument.target.kind);
  const method = useRimwright((state) => state.instrument.dome.method);
  const edit = useEdit();
  return (
    <>
      <fieldset className="target-kinds">
        <legend className="target-ask">Find the {anglePart[method]} that gives this</legend>
        {targetKindsOf(method).map((choice) => (
          <label key={choice} className="target-kind">
            <input
              type="radio"
              className="target-tick"
              name="target-kind"
              aria-label={targetChoices[choice].name}
              checked={kind === choice}
              onChange={() => edit((state) => switchTarget(state, choice))}
            />
            {targetChoices[choice].short}
          </label>
        ))}
      </fieldset>
      <p className="field-note">{targetChoices[kind].when}</p>
      <FieldRow path="target.value" />
    </>
  );
}
