import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Range, TargetKind } from "../../instrument/instrument.ts";

/** Stretches of an input worth looking at round a value, from close to wide. */
export const zooms = [0.25, 0.5, 1, 2, 4] as const;

/** Round `value`, so far as the field goes: a radius by half and more, an angle by a degree and a half, a length by some steps or a half. */
export function rangeRound(path: FieldPath, kind: TargetKind, value: number, zoom: number): Range {
  const { quantity, step, usual, min, max } = fieldAt(path, kind);
  const half = zoom * halfOf(quantity, step, usual === "ft", Math.abs(value));
  const low = Math.max(min, value - half, lowest(path));
  const high = Math.min(max, value + half);
  return low < high ? [low, high] : [value - half, value + half];
}

function halfOf(quantity: string, step: number, radius: boolean, size: number): number {
  if (quantity === "count") return 5;
  if (quantity === "angle") return 1.5;
  return radius ? size / 2 : Math.max(20 * step, Math.min(size / 2, 60 * step));
}

/** No shim is thinner than none. */
const lowest = (path: FieldPath): number =>
  path === "target.value" ? 0 : Number.NEGATIVE_INFINITY;
