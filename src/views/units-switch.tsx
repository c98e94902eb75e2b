import type { Units } from "../instrument/length.ts";
import { chooseUnits } from "../store/choosing.ts";
import { useAct, useRimwright } from "./store-context.ts";

const choices: readonly (readonly [Units, string, string])[] = [
  ["mm", "mm", "Millimetres"],
  ["in", "in", "Inches, decimal"],
  ["in-fraction", "1/64 in", "Inches in fractions, to 1/64"],
];

/** How lengths are shown. It changes no stored value. */
export function UnitsSwitch() {
  const units = useRimwright((state) => state.choices.units);
  const act = useAct();
  return (
    <fieldset className="switch">
      <legend className="unseen">Units shown</legend>
      {choices.map(([choice, sign, name]) => (
        <button
          key={choice}
          type="button"
          aria-pressed={units === choice}
          aria-label={name}
          onClick={() => act((state) => chooseUnits(state, choice))}
        >
          {sign}
        </button>
      ))}
    </fieldset>
  );
}
