import { readField, writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import type { Instrument, Range } from "../../instrument/instrument.ts";
import { nearestWorking } from "../nearest.ts";
import { overlapOf, type SharedShim } from "./shared-shim.ts";
import { serves, shimRangeOf } from "./shim-range.ts";

/** A change to one measure of one instrument that lets a shim serve it. */
export interface FieldChange {
  readonly field: ChangedField;
  readonly from: number;
  readonly to: number;
}

/** What a builder would rather change than the shape of the body. */
const changedFields = [
  "bridge.thickness",
  "neck.fingerboardThickness",
  "dome.flatLength",
] as const satisfies readonly FieldPath[];

type ChangedField = (typeof changedFields)[number];

/** The least change to each of the three measures that makes some shim within `wanted` serve, least first. */
export function changesFor(instrument: Instrument, [low, high]: Range): readonly FieldChange[] {
  const isReached = (changed: Instrument): boolean => {
    const range = shimRangeOf(changed);
    return typeof range !== "string" && range.low.shim <= high && range.high.shim >= low;
  };
  return changedFields
    .flatMap((field): readonly FieldChange[] => {
      const from = readField(instrument, field);
      const to = nearestWorking(instrument, field, isReached);
      if (from === null || to === null || !isReached(writeField(instrument, field, to))) return [];
      return [{ field, from, to }];
    })
    .sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from));
}

/** A change, and the member it is made to. */
export interface MemberChange extends FieldChange {
  readonly member: number;
}

/**
 * Where nothing serves all: the changes to one instrument alone that would make one shim serve, least
 * first. Only a member that sets an end can be the one, so only those are tried. Empty where no single
 * change is enough. The change just reaches: the shim that then serves leaves no room.
 */
export function changesToShare({ members, limits }: SharedShim): readonly MemberChange[] {
  const without = members.flatMap(({ range }, i) => (typeof range === "string" ? [i] : []));
  const tried = without.length > 0 ? without : [...new Set(limits)];
  if (without.length > 1) return [];
  return tried
    .flatMap((member) => {
      const others = members.filter((_, i) => i !== member).map(({ range }) => range);
      const { low, high } = overlapOf(others);
      const own = members[member];
      if (own === undefined || low > high) return [];
      return changesFor(own.instrument, [low, high]).map((change) => ({ ...change, member }));
    })
    .sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from));
}

/** The other way about: for the shim at hand, what to change on each member that it does not serve. Empty where it serves. */
export function changesForShim(
  { members }: SharedShim,
  shim: number,
): readonly (readonly FieldChange[])[] {
  return members.map(({ instrument, range }) =>
    serves(range, shim) ? [] : changesFor(instrument, [shim, shim]),
  );
}
