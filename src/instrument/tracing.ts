import { selfCrossing, type TracingFault } from "../geometry/outline/tracing.ts";
import { runsBack } from "../geometry/outline/turns.ts";
import type { Place } from "../geometry/polyline.ts";
import { mm, type Phrase, phrase } from "./phrase.ts";

/** How many places a kept tracing may have, and how far apart they are at least, mm: in x where it rises. */
export const tracingLimits = { fewest: 3, most: 400, longest: 1500, widest: 750, rise: 0.001 };

/** A drawing of an outline has no more places, and no larger coordinate, whatever its unit. */
export const mostPlaces = 20_000;
export const farthestPlace = 1e6;

/** What a tracing in a file must be; null when it is. */
export function tracingFlaw(places: readonly Place[]): string | null {
  const { fewest, most, longest, widest } = tracingLimits;
  if (places.length < fewest || places.length > most)
    return `${fewest} to ${most} places; it has ${places.length}`;
  const [first, last] = [places[0], places.at(-1)];
  if (first?.[0] !== 0 || first[1] !== 0) return "places that start at the tail, [0, 0]";
  if ((last?.[0] ?? 0) < 100 || (last?.[0] ?? 0) > longest)
    return `places that end 100 to ${longest} mm from the tail`;
  if (places.some(([, y], i) => y > widest || y < 0 || (y === 0 && i > 0 && i < places.length - 1)))
    return `half widths between 0 and ${widest} mm, 0 only at the ends`;
  return runsBack(places)
    ? cutawayFlaw(places)
    : spacingFlaw(places, ([x], [before]) => x - before);
}

function spacingFlaw(
  places: readonly Place[],
  apart: (place: Place, before: Place) => number,
): string | null {
  const near = places.findIndex((place, i) => {
    const before = places[i - 1];
    return before !== undefined && apart(place, before) < tracingLimits.rise / 2;
  });
  return near < 0
    ? null
    : `places ${tracingLimits.rise} mm apart or more; place ${near + 1} is nearer to the one before`;
}

/** What a line that runs back must be. */
function cutawayFlaw(places: readonly Place[]): string | null {
  const length = places.at(-1)?.[0] ?? 0;
  const past = places.findIndex(([x], i) => x >= length && i < places.length - 1);
  if (past >= 0)
    return `places short of the neck end, ${length} mm, until the last; place ${past + 1} is not`;
  const behind = places.findIndex(([x], i) => x <= 0 && i > 0);
  if (behind >= 0) return `places neckward of the tail; place ${behind + 1} is not`;
  const crossing = selfCrossing(places);
  if (crossing !== null)
    return `a line that does not cross itself; it does so near ${Math.round(crossing[0])} mm from the tail`;
  return spacingFlaw(places, ([x, y], [bx, by]) => Math.hypot(x - bx, y - by));
}

/** Why a drawing is no outline, in a builder's words. */
export function tracingFaultPhrase(fault: TracingFault): Phrase {
  switch (fault.why) {
    case "too few":
      return phrase`There are too few places here to make an outline.`;
    case "turns back":
      return phrase`About ${mm(fault.x)} from the tail the line runs back toward the tail by ${mm(fault.by)}. Only a cutaway's may, in the half toward the neck, and none may pass the neck end.`;
    case "folds":
      return phrase`About ${mm(fault.x)} from the tail the line folds over itself.`;
    case "crosses the centreline":
      return phrase`About ${mm(fault.x)} from the tail the line crosses the centreline.`;
    case "misses the tail":
      return phrase`The line does not start at the tail on the centreline: it misses it by ${mm(fault.by)}. Put the tail where the line starts.`;
    case "misses the neck end":
      return phrase`The line stops ${mm(fault.by)} from the neck end. Put the neck end where the line ends.`;
  }
}
