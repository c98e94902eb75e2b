interface Props<Value extends string> {
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
}: Props<Value>) {
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
