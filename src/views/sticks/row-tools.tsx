import type { Field } from "../../instrument/field.ts";
import type { Units } from "../../instrument/length.ts";
import type { Standing } from "../../profile/standing.ts";
import type { Model } from "../../store/document/state.ts";
import { Labelled } from "../fields/labelled.tsx";
import { Select } from "../fields/select.tsx";
import { fieldFormat, optional, ValueEntry } from "../fields/value-entry.tsx";
import { nameOf } from "../find-names.ts";
import { firstChoice, type RowChoice } from "./row-choice.ts";
import { columns } from "./stick-columns.ts";

const shows = [
  ["all", "all"],
  ["served", "served by it"],
  ["unserved", "not served"],
  ["ticked", "ticked"],
] as const satisfies readonly (readonly [RowChoice["show"], string])[];

const stands = [
  ["any", "any"],
  ["within", "within"],
  ["close", "close"],
  ["outside", "outside"],
] as const satisfies readonly (readonly [Standing | "any", string])[];

const numeric = columns.filter(({ quantity }) => quantity !== "text");

const filters = [
  ["none", "nothing"] as const,
  ...numeric.map(({ key, name }) => [key, name] as const),
];

interface Props {
  readonly choice: RowChoice;
  readonly models: readonly Model[];
  readonly units: Units;
  readonly onChoose: (choice: RowChoice) => void;
}

/** Finds instruments by name, by how the stick serves them, and by any column. */
export function RowTools({ choice, models, units, onChoose }: Props) {
  const { filter } = choice;
  const column = numeric.find(({ key }) => key === filter.column);
  const put = (part: Partial<RowChoice["filter"]>): void =>
    onChoose({ ...choice, filter: { ...filter, ...part } });
  return (
    <div className="stick-line stick-tools">
      <Labelled label="Find">
        {(id) => (
          <input
            id={id}
            type="search"
            value={choice.words}
            onChange={({ target }) => onChoose({ ...choice, words: target.value })}
          />
        )}
      </Labelled>
      <Select
        label="Show"
        value={choice.show}
        options={shows}
        onChoose={(show) => onChoose({ ...choice, show })}
      />
      {models.length > 0 && (
        <Select
          label="Model"
          value={choice.model ?? ""}
          options={[["", "any"], ...models.map(({ id, name }) => [id, nameOf(name)] as const)]}
          onChoose={(id) => onChoose({ ...choice, model: id === "" ? null : id })}
        />
      )}
      <Select
        label="Filter by"
        value={filter.column}
        options={filters}
        onChoose={(to) => onChoose({ ...choice, filter: { ...firstChoice.filter, column: to } })}
      />
      {column !== undefined && (
        <>
          {(["least", "most"] as const).map((end) => (
            <ValueEntry
              key={`${end} ${column.key}`}
              label={end === "least" ? "At least" : "At most"}
              value={filter[end]}
              placeholder="any"
              format={optional(fieldFormat(numberField(column.quantity === "angle"), units))}
              onChange={(value) => put({ [end]: value })}
            />
          ))}
          {column.side === "on" && (
            <Select
              label="Its window"
              value={filter.stands}
              options={stands}
              onChoose={(to) => put({ stands: to })}
            />
          )}
        </>
      )}
    </div>
  );
}

const numberField = (isAngle: boolean): Field => ({
  label: "",
  quantity: isAngle ? "angle" : "length",
  min: -1000,
  max: 1000,
  default: 0,
  step: 0.1,
  howTo: "",
});
