import { highest } from "../../geometry/peak.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { type NoRange, type ShimRange, shimRangeOf } from "./shim-range.ts";

export interface Member {
  readonly instrument: Instrument;
  readonly range: ShimRange | NoRange;
}

/** One shim for several instruments. */
export interface SharedShim {
  readonly members: readonly Member[];
  /** From the tail end in to the shim's edge, the same for all; null where each keeps its own. */
  readonly contact: number | null;
  /** What serves them all, and the place in it with the most room; null when nothing does. */
  readonly shared: SharedRange | null;
  /** The members that set the two ends, as indexes; -1 where a member has no range of its own. */
  readonly limits: readonly [low: number, high: number];
}

interface SharedRange {
  readonly low: number;
  readonly high: number;
  /** The middle: the shim farthest from either end. */
  readonly shim: number;
  /** How much thicker or thinner it may be before the first member leaves a window, mm. */
  readonly room: number;
}

/**
 * The shim that serves all. Room is counted in millimetres of shim: it is the shim that is cut too
 * thick or too thin, and one millimetre of it is the same for every member, while their windows are
 * of different kinds and widths. Each member's shims are one interval, so the most room is at the
 * middle of what they share.
 */
export function sharedShimOf(
  instruments: readonly Instrument[],
  contact: number | null,
): SharedShim {
  const members = instruments.map((own): Member => {
    const instrument = contact === null ? own : withContact(own, contact);
    return { instrument, range: shimRangeOf(instrument) };
  });
  const { low, high, limits } = overlapOf(members.map(({ range }) => range));
  const shared =
    members.length > 0 && low <= high
      ? { low, high, shim: (low + high) / 2, room: (high - low) / 2 }
      : null;
  return { members, contact, shared, limits };
}

export const withContact = (instrument: Instrument, contact: number): Instrument => ({
  ...instrument,
  shim: { ...instrument.shim, contact },
});

interface Overlap {
  readonly low: number;
  readonly high: number;
  readonly limits: readonly [number, number];
}

/** What several ranges share; empty (low over high) as soon as one of them is none. */
export function overlapOf(ranges: readonly (ShimRange | NoRange)[]): Overlap {
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let limits: [number, number] = [-1, -1];
  for (const [i, range] of ranges.entries()) {
    if (typeof range === "string") {
      return { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY, limits: [-1, -1] };
    }
    if (range.low.shim > low) [low, limits] = [range.low.shim, [i, limits[1]]];
    if (range.high.shim < high) [high, limits] = [range.high.shim, [limits[0], i]];
  }
  return { low, high, limits };
}

const contacts = 40;

/** The narrowest stick that is taken for a shim unless stated otherwise, mm; common practice, no source. */
export const usualLeastContact = 10;

/**
 * The one contact that leaves the most room, with the members at it: the stick's width under the rim,
 * no less than `least` mm, and no more than the shallowest tail block, which alone decides where it
 * is less than `least`. Room changes smoothly with the contact but where another member takes over as a limit;
 * the best of forty places is refined between its neighbours.
 */
export function bestContact(instruments: readonly Instrument[], least: number): SharedShim {
  if (instruments.length === 0) return sharedShimOf([], null);
  const deepest = Math.min(...instruments.map(({ shim }) => shim.tailBlockDepth));
  const room = (contact: number): number => {
    const { low, high } = overlapOf(
      instruments.map((instrument) => shimRangeOf(withContact(instrument, contact))),
    );
    return Number.isFinite(high - low) ? high - low : -1e9;
  };
  if (deepest <= least) return sharedShimOf(instruments, deepest);
  const places = Array.from(
    { length: contacts + 1 },
    (_, i) => least + ((deepest - least) * i) / contacts,
  );
  const best = highest(room, places, places.map(room));
  return sharedShimOf(instruments, best.x);
}
