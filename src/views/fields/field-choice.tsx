import type { FieldPath } from "../../instrument/field.ts";
import { fieldAt, fieldGroups, isFieldPath, pathsIn, readField } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { Labelled } from "./labelled.tsx";

interface Props {
  readonly label: string;
  readonly instrument: Instrument;
  readonly value: FieldPath | "";
  /** Shown first where nothing is chosen. */
  readonly ask?: string;
  readonly without?: readonly FieldPath[];
  /** Whether a field that is null now, such as no dome, can be chosen. */
  readonly evenNull?: boolean;
  readonly onChoose: (path: FieldPath) => void;
}

/** One of an instrument's numbers, in a builder's groups. */
export function FieldChoice(props: Props) {
  const { label, instrument, value, ask, onChoose } = props;
  const { kind } = instrument.target;
  return (
    <Labelled label={label}>
      {(id) => (
        <select
          id={id}
          value={value}
          onChange={({ target }) => {
            if (isFieldPath(target.value)) onChoose(target.value);
          }}
        >
          {ask !== undefined && <option value="">{ask}</option>}
          {fieldGroups.map(([group, heading]) => {
            const paths = pathsIn(group).filter((path) => choosable(path, props));
            return paths.length === 0 ? null : (
              <optgroup key={group} label={heading}>
                {paths.map((path) => (
                  <option key={path} value={path}>
                    {fieldAt(path, kind).label}
                  </option>
                ))}
              </optgroup>
            );
          })}
        </select>
      )}
    </Labelled>
  );
}

function choosable(path: FieldPath, { instrument, without, evenNull }: Props): boolean {
  if (path.startsWith("windows.") || without?.includes(path)) return false;
  return evenNull === true || readField(instrument, path) !== null;
}
