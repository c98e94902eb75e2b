import { type OutcomeKey, outcomeKeys, outcomeNames } from "../../profile/comparison/outcomes.ts";
import { Select } from "../fields/select.tsx";

interface OutcomeChoiceProps {
  readonly value: OutcomeKey;
  readonly onChoose: (key: OutcomeKey) => void;
}

export const OutcomeChoice = ({ value, onChoose }: OutcomeChoiceProps) => (
  <Select
    label="Outcome"
    value={value}
    options={outcomeKeys.map((key) => [key, outcomeNames[key][0]])}
    onChoose={onChoose}
  />
);

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
