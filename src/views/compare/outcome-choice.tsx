import { type OutcomeKey, outcomeKeys, outcomeNames } from "../../profile/sweep-outcome.ts";
import { Labelled } from "../fields/labelled.tsx";

interface Props {
  readonly value: OutcomeKey;
  readonly onChoose: (key: OutcomeKey) => void;
}

export function OutcomeChoice({ value, onChoose }: Props) {
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
