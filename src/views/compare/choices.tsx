import { type OutcomeKey, outcomeKeys, outcomeNames } from "../../profile/comparison/outcomes.ts";
import { Labelled } from "../fields/labelled.tsx";

interface OutcomeChoiceProps {
  readonly value: OutcomeKey;
  readonly onChoose: (key: OutcomeKey) => void;
}

export function OutcomeChoice({ value, onChoose }: OutcomeChoiceProps) {
  return (
    <Labelled label="Outcome">
      {(id) => (
        <select
          id={id}
          value={value}
          onChange={({ target }) => {
            const chosen = outcomeKeys.find((key) => key === target.value);
            if (chosen !== undefined) onChoose(chosen);
          }}
        >
          {outcomeKeys.map((key) => (
            <option key={key} value={key}>
              {outcomeNames[key][0]}
            </option>
          ))}
        </select>
      )}
    </Labelled>
  );
}

interface ChoiceButtonsProps<Value extends string> {
  readonly legend: string;
  readonly options: readonly (readonly [value: Value, name: string])[];
  readonly value: Value;
  readonly onChoose: (value: Value) => void;
}

/** One of a few, as buttons in a row. */
export function ChoiceButtons<Value extends string>({
  legend,
  options,
  value,
  onChoose,
}: ChoiceButtonsProps<Value>) {
  return (
    <fieldset className="switch">
      <legend>{legend}</legend>
      {options.map(([option, name]) => (
        <button
          key={option}
          type="button"
          aria-pressed={value === option}
          onClick={() => onChoose(option)}
        >
          {name}
        </button>
      ))}
    </fieldset>
  );
}
