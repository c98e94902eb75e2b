import type { FieldPath } from "./fields.ts";
import type { Instrument } from "./instrument.ts";

type Node = { readonly [key: string]: unknown };

/** The number at `path`; null where the instrument has null there, such as no dome. */
export function readField(instrument: Instrument, path: FieldPath): number | null {
  const value = path
    .split(".")
    .reduce<unknown>((node, key) => (node as Node | undefined)?.[key], instrument);
  return typeof value === "number" ? value : null;
}

/**
 * The instrument with `value` at `path`, all other branches shared with the one given, which stays as
 * it was. It checks no range: `readInstrument` does.
 */
export function writeField(
  instrument: Instrument,
  path: FieldPath,
  value: number | null,
): Instrument {
  return readField(instrument, path) === value
    ? instrument
    : (written(instrument, path.split("."), value) as Instrument);
}

function written(node: unknown, [key, ...rest]: readonly string[], value: number | null): unknown {
  if (key === undefined) return value;
  if (Array.isArray(node))
    return node.map((old, i) => (String(i) === key ? written(old, rest, value) : old));
  const branch = node as Node;
  return { ...branch, [key]: written(branch[key], rest, value) };
}
