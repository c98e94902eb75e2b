import type { AsBuilt } from "../../instrument/as-built/as-built.ts";
import type { Variant } from "../../profile/comparison/variant.ts";
import type { MeasurementTexts } from "./state.ts";

/** Names an edit of variants by the one place it changes, so that a text typed letter by letter is one act; "" for an act of its own. */
export function variantsGesture(before: readonly Variant[], after: readonly Variant[]): string {
  if (before.length !== after.length) return "";
  const place = onlyPlace(before, after, 3);
  // A target comes and goes whole.
  const named = place[1] === "target" ? place.slice(0, 2) : place;
  return named.length < 2 ? "" : `variants ${named.join(" ")}`;
}

/** Names an edit of a record likewise. A step done, a correction taken, a finish: each is an act of its own. */
export function recordGesture(before: AsBuilt, after: AsBuilt): string {
  const place = onlyPlace(before, after, 3);
  const [part, key, what = "value"] = place;
  if (part === "readings" && key !== undefined) return `record readings ${key} ${what}`;
  return (part === "notes" && place.length === 2) || (part === "strings" && place.length === 3)
    ? `record ${place.join(" ")}`
    : "";
}

/** Names what was typed into a record. */
export function measurementTextsGesture(before: MeasurementTexts, after: MeasurementTexts): string {
  const [key] = onlyPlace(before, after, 1);
  return key !== undefined && Object.hasOwn(after, key) ? `type reading ${key}` : "";
}

/** The way down to the only place where two values differ, at most `depth` keys; it ends where one of them has nothing to go into, or more than one key differs. */
function onlyPlace(before: unknown, after: unknown, depth: number): readonly string[] {
  if (depth === 0 || !isGroup(before) || !isGroup(after)) return [];
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  const [key, ...others] = keys.filter((one) => !same(before[one], after[one]));
  if (key === undefined || others.length > 0) return [];
  return [key, ...onlyPlace(before[key], after[key], depth - 1)];
}

const same = (a: unknown, b: unknown): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;
