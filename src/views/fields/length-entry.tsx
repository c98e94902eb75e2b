import type { Field } from "../../instrument/field.ts";
import { useRimwright } from "../store-context.ts";
import { fieldFormat, ValueEntry } from "./value-entry.tsx";

interface Props {
  readonly label: string;
  /** The part of the label that is shown, where what stands before it says the rest. */
  readonly shown?: string;
  /** mm; null where nothing is stated. */
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  /** The word for nothing stated, where that is allowed. */
  readonly none?: string;
  /** Radii are quoted in feet where inches are shown. */
  readonly feet?: boolean;
  readonly onChange: (mm: number | null) => void;
}

/** A length that is a choice of this view and no part of the instrument. */
export function LengthEntry(props: Props) {
  const { label, shown = label, value, least, most, none, feet = false, onChange } = props;
  const units = useRimwright((state) => state.choices.units);
  const field: Field = {
    ...{ label, quantity: "length", min: least, max: most, default: least, step: 1, howTo: "" },
    ...(none !== undefined && { nullWord: none }),
    ...(feet && { usual: "ft" }),
  };
  const format = fieldFormat(field, units);
  const read: typeof format.read = (text) =>
    format.read(text.trim() === "" && none !== undefined ? none : text);
  return <ValueEntry {...{ label, shown, value, onChange }} format={{ ...format, read }} />;
}
