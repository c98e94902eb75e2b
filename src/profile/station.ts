import { radians } from "../geometry/circle.ts";
import { type Dome, domeZ } from "../geometry/dome.ts";
import { edgeOf, highestOn } from "../geometry/outline/edge.ts";
import { turnsOf } from "../geometry/outline/turns.ts";
import type { Place } from "../geometry/polyline.ts";
import { backZ } from "./back.ts";
import { type Givens, isDomed } from "./givens.ts";
import { type Half, spanAt } from "./halves.ts";
import type { Station } from "./outcome.ts";
import { removalOf, rimZ } from "./rim.ts";
import { rounding } from "./standing.ts";

/** What a station is read from. */
export interface Rim {
  readonly givens: Givens;
  readonly dome: Dome;
  readonly back: Dome;
  /** Degrees. */
  readonly pitch: number;
}

/** Stations of one half every `spacing` mm of edge from the tail seam, and one at each landmark, in order. */
export function stationsOf(rim: Rim, half: Half, spacing: number): readonly Station[] {
  const { outline } = half;
  const stations: Station[] = [];
  let arc = spacing;
  for (const landmark of landmarksOf(rim, half)) {
    for (; arc < landmark.arcLength; arc += spacing) {
      stations.push(stationAt(rim, half, outline.placeAtArc(arc), arc, ""));
    }
    stations.push(landmark);
  }
  return stations;
}

function landmarksOf(rim: Rim, half: Half): readonly Station[] {
  const { outline } = half;
  const { breakX, seat } = rim.givens;
  const landmark = (name: string, u: number): Station =>
    stationAt(rim, half, outline.placeAt(u), outline.arcLength(u), name);
  return [
    landmark("tail", 0),
    ...turnsOn(rim.givens, half).map(({ name, u }) => landmark(name, u)),
    ...(seat === null ? [landmark("break", breakX)] : []),
    landmark("neck end", outline.end),
  ].sort((a, b) => a.arcLength - b.arcLength);
}

/** The bouts and the waist, as stated or where a traced outline turns, and a cutaway's horn and scoop. */
function turnsOn(
  { instrument }: Givens,
  { side, outline }: Half,
): readonly { readonly name: string; readonly u: number }[] {
  const { tracing, lowerBoutAt, waistAt, upperBoutAt } = instrument.body;
  if (side === "bass" && tracing === undefined)
    return [
      { name: "lower bout", u: lowerBoutAt },
      { name: "waist", u: waistAt },
      { name: "upper bout", u: upperBoutAt },
    ];
  const { lower, waist, upper, horn, scoop } = turnsOf(outline);
  const named = [
    ["lower bout", lower],
    ["waist", waist],
    ["upper bout", waist === null ? null : upper],
    ["horn", horn],
    ["cutaway", scoop],
  ] as const;
  return named.flatMap(([name, u]) => (u === null ? [] : { name, u }));
}

function stationAt(
  rim: Rim,
  { sign }: Half,
  [x, halfWidth]: Place,
  arcLength: number,
  name: string,
): Station {
  const { givens, dome } = rim;
  const zone = isDomed(givens, x) ? "dome" : "flat";
  const z = rimZ(givens, dome, x, sign * halfWidth);
  return {
    name,
    x,
    halfWidth,
    arcLength,
    removal: removalOf(givens, dome, radians(rim.pitch))(x, z),
    sideDepth: z - backZ(rim.back, x, sign * halfWidth),
    zone,
  };
}

/** A place on a side, `along` its edge from the tail seam, and how far the back's edge lies there under the level rim's, `rimOffset` not included. */
interface DeepestPlace {
  readonly along: number;
  readonly depth: number;
}

/**
 * Where the back's edge lies deepest under the level edge one side starts with: along the outline or,
 * since the back is domed, on the straight at the neck end, nearest the middle between its corners. So wide
 * must the strip be that the side is cut from, when no part of the edge was too low.
 */
export function deepestOn({ givens, dome, back, pitch }: Rim, half: Half): DeepestPlace {
  const { outline, sign } = half;
  const removal = removalOf(givens, dome, radians(pitch));
  const depth = (x: number, y: number): number => {
    const z = isDomed(givens, x) ? domeZ(dome, x, y) : 0;
    return removal(x, z) + z - backZ(back, x, y);
  };
  const edge = edgeOf(outline, outline.end);
  const most = highestOn(outline, edge, (x, halfWidth) => depth(x, sign * halfWidth));
  const { length } = outline;
  const inward = Math.max(0, sign * spanAt(givens.halves, length).middle);
  const onStraight = depth(length, sign * inward);
  return onStraight > most.value + rounding
    ? { along: outline.totalArc() + outline.halfWidth(length) - inward, depth: onStraight }
    : { along: outline.arcLength(most.x), depth: most.value };
}
