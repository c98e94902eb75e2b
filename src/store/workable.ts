import type { FieldPath } from "../instrument/field.ts";
import { readField, writeField } from "../instrument/field-path.ts";
import { fieldAt } from "../instrument/fields.ts";
import type { Range } from "../instrument/instrument.ts";
import { hasPlan } from "./plan.ts";
import type { Work } from "./state.ts";

/**
 * The values of one field round its last good one that give a plan with the other fields as they are
 * now; null when even the last good one gives none, so that the fault lies elsewhere too.
 */
export function workableRange(
  { instrument, lastGood }: Pick<Work, "instrument" | "lastGood">,
  path: FieldPath,
): Range | null {
  const good = readField(lastGood, path);
  const works = (value: number): boolean => hasPlan(writeField(instrument, path, value));
  if (good === null || !works(good)) return null;
  const { min, max, quantity } = fieldAt(path, instrument.target.kind);
  const whole = quantity === "count";
  return [boundary(good, min, works, whole), boundary(good, max, works, whole)];
}

function boundary(
  good: number,
  end: number,
  works: (value: number) => boolean,
  whole: boolean,
): number {
  if (works(end)) return end;
  let [inside, outside] = [good, end];
  for (let halving = 0; halving < 40 && Math.abs(outside - inside) > 1e-6; halving++) {
    const middle = (inside + outside) / 2;
    const tried = whole ? Math.round(middle) : middle;
    if (whole && (tried === inside || tried === outside)) break;
    if (works(tried)) inside = tried;
    else outside = tried;
  }
  return inside;
}
