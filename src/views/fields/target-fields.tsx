import { targetKinds } from "../../instrument/instrument.ts";
import { targetFields } from "../../instrument/outcome-fields.ts";
import { sayPhrase } from "../../instrument/say-phrase.ts";
import { switchTarget } from "../../store/edits.ts";
import { rangePhrase } from "../../store/plan.ts";
import { useAct, useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import { FieldRow } from "./field-row.tsx";

/** Which outcome the shim is found for. The choice itself moves nothing: the next target starts at what is now. */
export function TargetFields() {
  const kind = useRimwright((state) => state.instrument.target.kind);
  const act = useAct();
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
              onChange={() => act((state) => switchTarget(state, choice))}
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
