import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Instrument, Range } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { roundedDown, roundedUp, shownValue } from "../../instrument/phrase.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { hasPlan } from "./plan.ts";
import type { Document } from "./state.ts";

/**
 * The values of one field round its last good one that give a plan with the other fields as they are
 * now; null when even the last good one gives none, so that the fault lies elsewhere too.
 */
export function workableRange(
  { instrument, lastGood }: Pick<Document, "instrument" | "lastGood">,
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
  // Halving ends just inside a limit: a round figure as near is the limit itself.
  const round = Math.round(inside * 1e4) / 1e4;
  return Math.abs(round - inside) < 2e-6 && works(round) ? round : inside;
}

/**
 * The nearest value that works, as it is shown in `units` and rounded to the working side, so that it works
 * when it is typed so too; as it is where what works is narrower than that.
 */
export function offeredValue(
  instrument: Instrument,
  { field, nearest }: Refusal,
  units: Units,
): number | null {
  if (nearest === null) return null;
  const as = fieldAt(field, instrument.target.kind).quantity;
  const up = nearest > (readField(instrument, field) ?? nearest);
  const rounded = up ? roundedUp({ value: nearest, as }) : roundedDown({ value: nearest, as });
  const shown = shownValue(rounded, units);
  return hasPlan(writeField(instrument, field, shown)) ? shown : nearest;
}
