import { bisectLeft, cumsum, max } from "d3-array";
import { numberAt } from "../../geometry/number-at.ts";
import type { Range } from "../../instrument/instrument.ts";

/** A stick that a set has, and whom it serves. */
export interface SetStick {
  /** mm: the middle of what those it serves share. */
  readonly thickness: number;
  /** How much thicker or thinner it may be before the first of them is no longer served, mm. */
  readonly room: number;
  /** Those it serves, as places among the ranges asked about. */
  readonly members: readonly number[];
  /** The members whose ranges end first below and above it. */
  readonly limits: readonly [low: number, high: number];
}

/** A range of thicknesses that serve one instrument, with its place in what was asked. */
interface Member {
  readonly low: number;
  readonly high: number;
  readonly index: number;
}

/**
 * The fewest sticks that serve all, thinnest first. Each range is one interval: taken by their thick ends, a
 * stick as thick as the first one's end allows serves all that any stick there could, so no set is smaller.
 * Of the sets of that many, one whose least room is the most: ranges drawn in by a room at both ends are
 * served by as few sticks or are not, and the greatest room that allows it is halved to.
 */
export function fewestSticks(ranges: readonly Range[]): readonly SetStick[] {
  const members = membersOf(ranges);
  const fewest = grouped(members, 0).length;
  let [works, fails] = [0, ranges.reduce((least, [a, b]) => Math.min(least, (b - a) / 2), 1e3)];
  // A millionth of a millimetre is closer than any hand.
  while (fails - works > 1e-6) {
    const room = (works + fails) / 2;
    if (grouped(members, room).length === fewest) works = room;
    else fails = room;
  }
  return grouped(members, works).map(setStick);
}

/** By their thick ends. */
const membersOf = (ranges: readonly Range[]): readonly Member[] =>
  ranges
    .map(([low, high], index) => ({ low, high, index }))
    .sort((a, b) => a.high - b.high || a.low - b.low);

/** Groups that one stick serves with this much room, as few as there can be. */
function grouped(members: readonly Member[], room: number): readonly (readonly Member[])[] {
  const groups: Member[][] = [];
  let stick = Number.NEGATIVE_INFINITY;
  for (const member of members) {
    if (member.low + room <= stick) groups.at(-1)?.push(member);
    else {
      stick = member.high - room;
      groups.push([member]);
    }
  }
  return groups;
}

function setStick(group: readonly Member[]): SetStick {
  const low = group.reduce((most, one) => (one.low > most.low ? one : most));
  const high = group.reduce((least, one) => (one.high < least.high ? one : least));
  return {
    thickness: (low.low + high.high) / 2,
    room: (high.high - low.low) / 2,
    members: group.map(({ index }) => index).sort((a, b) => a - b),
    limits: [low.index, high.index],
  };
}

/**
 * Up to `count` sticks that together serve the most that so many can, thinnest first. Exact: a stick can be
 * moved up to the thick end of some range it serves, so only those ends are tried; and a thicker stick adds
 * those whose thin ends lie past the thinner one. So the most that k sticks serve with the thickest at one
 * end is the most of k − 1 up to some earlier end, and what lies past it.
 */
export function mostServed(ranges: readonly Range[], count: number): readonly SetStick[] {
  const members = membersOf(ranges);
  const ends = [...new Set(members.map(({ high }) => high))];
  const rounds = roundsOf(members, ends, Math.min(count, ends.length));
  const places = placesOf(rounds);
  return places
    .map((place, i) => {
      const end = numberAt(ends, place);
      const thinner = i === 0 ? Number.NEGATIVE_INFINITY : numberAt(ends, numberAt(places, i - 1));
      return members.filter(({ low, high }) => thinner < low && low <= end && end <= high);
    })
    .map(setStick);
}

/** What one stick more does: with the thickest at each end, the most served, and the end of the next thinner; -1 where it is the only one. */
interface Round {
  readonly served: Int32Array;
  readonly thinner: Int32Array;
}

function roundsOf(
  members: readonly Member[],
  ends: readonly number[],
  count: number,
): readonly Round[] {
  const rounds = Array.from({ length: count }, () => ({
    served: new Int32Array(ends.length),
    thinner: new Int32Array(ends.length).fill(-1),
  }));
  // Of the members whose thick end is not passed yet, how many have their thin end at each end, or between it and the one before.
  const thinAt = new Int32Array(ends.length);
  const ranks = members.map(({ low }) => bisectLeft(ends, low));
  for (const rank of ranks) thinAt[rank] = numberAt(thinAt, rank) + 1;
  let passed = 0;
  for (const [j, end] of ends.entries()) {
    const upTo = cumsum(thinAt.subarray(0, j + 1));
    for (const [r, round] of rounds.entries()) addEnd(round, j, upTo, rounds[r - 1]?.served);
    for (; members[passed]?.high === end; passed++) {
      const rank = numberAt(ranks, passed);
      thinAt[rank] = numberAt(thinAt, rank) - 1;
    }
  }
  return rounds;
}

/** The most served with the thickest stick at end j, `fewer` being what one stick less serves; `upTo` counts those there by their thin ends. */
function addEnd(
  { served, thinner }: Round,
  j: number,
  upTo: Float64Array,
  fewer: Int32Array | undefined,
): void {
  const all = numberAt(upTo, j);
  let [most, from] = [all, -1];
  if (fewer !== undefined) {
    for (let i = 0; i < j; i++) {
      const both = (fewer[i] as number) + all - (upTo[i] as number);
      if (both > most) [most, from] = [both, i];
    }
  }
  served[j] = most;
  thinner[j] = from;
}

/** The ends at which the sticks stand, from the last round back; as few as serve the most. */
function placesOf(rounds: readonly Round[]): readonly number[] {
  const mosts = rounds.map(({ served }) => max(served) ?? 0);
  let r = mosts.indexOf(max(mosts) ?? 0);
  const places: number[] = [];
  for (let place = rounds[r]?.served.indexOf(numberAt(mosts, r)) ?? -1; place >= 0; r--) {
    places.unshift(place);
    place = rounds[r]?.thinner[place] ?? -1;
  }
  return places;
}
