import type { TargetKind } from "../../instrument/instrument.ts";
import { targetFields, targetKinds } from "../../instrument/outcome-fields.ts";
import { switchTarget } from "../../store/document/edits.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { FieldRow } from "./field-row.tsx";

interface Choice {
  /** On the button, where the question stands over it. */
  readonly short: string;
  readonly name: string;
  /** When a builder would choose it. */
  readonly when: string;
}

const targetChoices: Readonly<Record<TargetKind, Choice>> = {
  pitch: {
    short: "Pitch",
    name: targetFields.pitch.label,
    when: "When the angle is given: a heel already cut, or the pitch you always use.",
  },
  bridgeClearance: {
    short: "Fret plane",
    name: targetFields.bridgeClearance.label,
    when: "When the bridge is made: a straightedge on the frets should just clear it.",
  },
  saddleExposure: {
    short: "Saddle",
    name: targetFields.saddleExposure.label,
    when: "When you want so much saddle to work with, now and in years to come.",
  },
  stringHeight: {
    short: "String height",
    name: targetFields.stringHeight.label,
    when: "When the strings' height over the top comes first: it drives the top.",
  },
  shim: {
    short: "Shim",
    name: "Shim itself, as stated",
    when: "When you have the stick and want to know what it gives.",
  },
};

/** Which outcome the shim is found for. The choice itself moves nothing: the next target starts at what is now. */
export function TargetFields() {
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
