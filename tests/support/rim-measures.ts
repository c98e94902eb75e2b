import type { Instrument } from "../../src/instrument/instrument.ts";
import type { BreakProfile } from "../../src/profile/outcome.ts";
import {
  type CutRim,
  cutRim,
  edgeHeight,
  type Fineness,
  highestAlong,
  overrunReach,
} from "./cut-rim.ts";
import { edgesOf, topOf, uprightArea, type Workshop } from "./solid.ts";

/** One thing measured on the cut solid beside what the core says, and how far facets may part them. */
export interface Measure {
  readonly what: string;
  readonly solid: number;
  readonly core: number;
  readonly bound: number;
}

/** What facets may do, mm: to a height on the centreline, to one at the outer edge, and to what came off there. */
interface Bounds {
  readonly centre: number;
  readonly edge: number;
  readonly removal: number;
}

/** The kernel works in double precision; this covers its merging of near vertices. */
const rounding = 2e-6;

/**
 * Facets stand inside the sphere by their diagonal squared over 8R. The break's two seats lie where the
 * polyline puts them, and so does the edge at a station: both inside the curve by a measured width, which the
 * dome's slope there turns into height.
 */
function boundsOf(
  shop: Workshop,
  { dome }: Instrument,
  profile: BreakProfile,
  rim: CutRim,
): Bounds {
  const curvature = dome.dishRadius === null ? 0 : 1 / dome.dishRadius;
  const inset = (x: number, halfWidth: number): number => {
    const { left } = edgesOf(shop.sectionAt(rim.level, x));
    return Math.abs(halfWidth - left[0]) * halfWidth * curvature;
  };
  const centre = rim.dishSag + inset(rim.breakX, profile.breakHalfWidth) + rounding;
  const domed = domedStations(profile, rim);
  const edge = centre + Math.max(...domed.map(({ x, halfWidth }) => inset(x, halfWidth)));
  return { centre, edge, removal: centre + edge };
}

const domedStations = (profile: BreakProfile, rim: CutRim): BreakProfile["stations"] =>
  profile.stations.filter(({ x }) => x > 1 && x < rim.breakX - 1e-6);

/** Cuts the rim and measures it: only what the solid shows, in the frame of the flat. */
export function measuresOf(
  shop: Workshop,
  instrument: Instrument,
  profile: BreakProfile,
  fineness: Fineness,
): Measure[] {
  const rim = cutRim(shop, instrument, profile.shim, fineness);
  const bounds = boundsOf(shop, instrument, profile, rim);
  const tailDrop = -topOf(rim.boarded, 1e-6, 0);
  const slope = (tailDrop - instrument.dome.tailExtra) / rim.breakX;
  const pitch = Math.atan(slope);
  const cameOff = (x: number, z: number): number =>
    ((x - rim.breakX) * slope - z) * Math.cos(pitch);
  const degreesPerMm = 180 / Math.PI / rim.breakX;
  return [
    { what: "tailDrop", solid: tailDrop, core: profile.tailDrop, bound: bounds.centre },
    {
      what: "flatGap",
      solid: -topOf(rim.dished, profile.saddleX, 0),
      core: profile.flatGap,
      bound: bounds.centre,
    },
    {
      what: "pitch",
      solid: (pitch * 180) / Math.PI,
      core: profile.pitch,
      bound: bounds.centre * degreesPerMm,
    },
    ...removalMeasures(shop, instrument, profile, { rim, cameOff, bound: bounds.removal }),
    ...overrunMeasures(shop, profile, rim, bounds.edge),
  ];
}

interface Removal {
  readonly rim: CutRim;
  readonly cameOff: (x: number, z: number) => number;
  readonly bound: number;
}

function removalMeasures(
  shop: Workshop,
  { body }: Instrument,
  profile: BreakProfile,
  { rim, cameOff, bound }: Removal,
): Measure[] {
  const atStations = profile.stations
    .filter(({ x }) => x > 1 && x < body.length && Math.abs(x - rim.breakX) > 1e-6)
    .flatMap(({ x, zone, removal }) => {
      const { left, right } = edgesOf(
        shop.sectionAt(zone === "dome" ? rim.dished : rim.boarded, x),
      );
      return [left, right].map(([y, z]) => {
        const what = `removal at ${x.toFixed(1)}, ${y.toFixed(1)}`;
        return { what, solid: cameOff(x, z), core: removal, bound };
      });
    });
  const sanded = (x: number): number => cameOff(x, edgeHeight(shop, rim.dished, x));
  const nearBreak = rim.breakX - 1e-6;
  const rimOffset = Math.max(
    0,
    highestAlong((x) => -sanded(x), 1, nearBreak),
  );
  const most = Math.max(highestAlong(sanded, 1, nearBreak), cameOff(body.length, 0));
  return [
    ...atStations,
    { what: "rimOffset", solid: rimOffset, core: profile.rimOffset, bound },
    { what: "maxRemoval", solid: most + rimOffset, core: profile.maxRemoval, bound: 2 * bound },
  ];
}

/** How far and how deep the board cut into the edge the dish had left. A place is as uncertain as the height over the slope. */
function overrunMeasures(
  shop: Workshop,
  profile: BreakProfile,
  rim: CutRim,
  bound: number,
): Measure[] {
  const reach = overrunReach(shop, rim);
  const start = rim.breakX - reach;
  const edge = (x: number): number => edgeHeight(shop, rim.dished, x);
  const steepness = reach === 0 ? 1 : (edge(start + 2) - edge(start - 2)) / 4;
  const depth = highestAlong(
    (x) => edge(x) - edgeHeight(shop, rim.boarded, x),
    reach === 0 ? 1 : start,
    rim.breakX - 1e-6,
  );
  return [
    {
      what: "overrunLength",
      solid: reach,
      core: profile.overrunLength,
      bound: bound / steepness,
    },
    { what: "overrunDepth", solid: depth, core: profile.overrunDepth, bound },
  ];
}

/**
 * Area of side between the level edge and the finished one, all round, where the board does not overrun.
 * Too low counts against too high.
 */
export function areaMeasure(
  shop: Workshop,
  instrument: Instrument,
  profile: BreakProfile,
  fineness: Fineness,
): Measure {
  const rim = cutRim(shop, instrument, profile.shim, fineness);
  const bounds = boundsOf(shop, instrument, profile, rim);
  const level = shop.boardCut(rim.level, rim.breakX, (profile.pitch * Math.PI) / 180);
  const last = profile.stations.at(-1);
  if (last === undefined) throw new Error("a rim without stations");
  const polyline = rim.half.reduce((length, [x, y], i) => {
    const [x0, y0] = rim.half[i - 1] ?? [x, y];
    return length + Math.hypot(x - x0, y - y0);
  }, 0);
  return {
    what: "area of side sanded away",
    solid: uprightArea(level) - uprightArea(rim.boarded),
    core: sandedArea(profile),
    bound:
      2 * bounds.edge * last.arcLength +
      2 * profile.maxRemoval * (last.arcLength - polyline) +
      1e-2,
  };
}

/** The core's removal along the core's arc length, by trapezoids, both sides and the straight neck end. */
function sandedArea({ stations, pitch }: BreakProfile): number {
  const upright = Math.cos((pitch * Math.PI) / 180);
  let oneHand = 0;
  stations.forEach((station, i) => {
    const before = stations[i - 1] ?? station;
    const mean = (before.removal + station.removal) / 2;
    oneHand += mean * (station.arcLength - before.arcLength);
  });
  const end = stations.at(-1);
  return (2 * (oneHand + (end === undefined ? 0 : end.removal * end.halfWidth))) / upright;
}
