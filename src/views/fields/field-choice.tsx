import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { appliesTo, fieldAt, fieldGroups, pathsIn } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { Select } from "./select.tsx";

interface Props {
  readonly label: string;
  readonly instrument: Instrument;
  readonly value: FieldPath | null;
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
  const options = fieldGroups
    .map(([group, heading]) => ({
      heading,
      options: pathsIn(group)
        .filter((path) => choosable(path, props))
        .map((path) => [path, fieldAt(path, kind).label] as const),
    }))
    .filter(({ options: some }) => some.length > 0);
  return <Select {...{ label, value, ask, options, onChoose }} />;
}

function choosable(path: FieldPath, { instrument, without, evenNull }: Props): boolean {
  if (!appliesTo(path, instrument.dome.method)) return false;
  if (path.startsWith("windows.") || without?.includes(path)) return false;
  return evenNull === true || readField(instrument, path) !== null;
}
