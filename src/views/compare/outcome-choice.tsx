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
