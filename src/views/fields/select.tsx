import type { ReactNode } from "react";
import { Labelled } from "./labelled.tsx";

type Option<Value> = readonly [value: Value, name: string];

interface OptionGroup<Value> {
  readonly heading: string;
  readonly options: readonly Option<Value>[];
}

interface Props<Value extends string | number> {
  readonly label: ReactNode;
  readonly labelUnseen?: boolean;
  /** Null where nothing is chosen: `ask` is shown then. */
  readonly value: Value | null;
  readonly ask?: string | undefined;
  readonly options: readonly (Option<Value> | OptionGroup<Value>)[];
  readonly onChoose: (value: Value) => void;
}

/** One of several, chosen from a list that opens; the list may have headings. */
export function Select<Value extends string | number>(props: Props<Value>) {
  const { label, labelUnseen = false, value, ask, options, onChoose } = props;
  const all = options.flatMap((one) => (isGroup(one) ? one.options : [one]));
  const choose = (text: string): void => {
    const chosen = all.find(([option]) => String(option) === text);
    if (chosen !== undefined) onChoose(chosen[0]);
  };
  return (
    <Labelled label={label} unseen={labelUnseen}>
      {(id) => (
        <select id={id} value={value ?? ""} onChange={({ target }) => choose(target.value)}>
          {value === null && <option value="">{ask}</option>}
          {options.map((one) =>
            isGroup(one) ? (
              <optgroup key={one.heading} label={one.heading}>
                {one.options.map(optionOf)}
              </optgroup>
            ) : (
              optionOf(one)
            ),
          )}
        </select>
      )}
    </Labelled>
  );
}

const isGroup = <Value,>(one: Option<Value> | OptionGroup<Value>): one is OptionGroup<Value> =>
  "heading" in one;

const optionOf = <Value extends string | number>([value, name]: Option<Value>) => (
  <option key={value} value={value}>
    {name}
  </option>
);
