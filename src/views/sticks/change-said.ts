import { fieldAt } from "../../instrument/fields.ts";
import { formatLength, nearest64, type Units } from "../../instrument/length.ts";
import type { FieldChange } from "../../profile/sticks/shared-shim-changes.ts";

/** A length to be made at the bench; in inches also to the nearest 64th. */
export const lengthSaid = (mm: number, units: Units): string =>
  units === "mm"
    ? formatLength(mm, { unit: "mm", decimals: 2 })
    : `${formatLength(mm, { unit: "in", decimals: 3 })}${Math.abs(mm) < half64 ? "" : ` (${nearest64(mm)})`}`;

/** mm: what is less than half a 64th of an inch is none of them. */
const half64 = 25.4 / 128;

/** A change to one measure, such as "bridge thickness 0.4 mm less (9.1 mm)". */
export function changeSaid({ field, from, to }: FieldChange, units: Units): string {
  const { label } = fieldAt(field, "shim");
  const more = to > from ? "more" : "less";
  return `${label.toLowerCase()} ${lengthSaid(Math.abs(to - from), units)} ${more} (${lengthSaid(to, units)})`;
}
