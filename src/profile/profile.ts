import { degrees } from "../geometry/circle.ts";
import type { Dome } from "../geometry/dome.ts";
import { circleRound } from "../geometry/outline/circle-round-halves.ts";
import { edgeOf } from "../geometry/outline/edge.ts";
import { enclosingCircle } from "../geometry/outline/enclosing-circle.ts";
import { writeField } from "../instrument/field-value.ts";
import { type FieldPath, fieldAt } from "../instrument/fields.ts";
import type { Instrument, Range, TargetKind } from "../instrument/instrument.ts";
import { anglePart } from "../instrument/outcome-fields.ts";
import { phrase } from "../instrument/phrase.ts";
import { backOf } from "./back.ts";
import { checksOf } from "./checks/checks.ts";
import { domedEnd, type Givens, givensOf, type SeatPlace } from "./givens.ts";
import { spanAt } from "./halves.ts";
import { nearestWorking } from "./nearest.ts";
import { fingerboardEndX } from "./neck.ts";
import type {
  BreakOutcomes,
  Outcomes,
  Profile,
  ProfileResult,
  Reach,
  Refusal,
  SeatOutcomes,
} from "./outcome.ts";
import { cleanShimIn, overrunOf } from "./overrun.ts";
import { reachOf } from "./reach.ts";
import { datumHeight, removalOver, undercutOf } from "./rim.ts";
import { exposuresAcross } from "./saddle.ts";
import { chainOf } from "./saddle-chain.ts";
import { cutOf } from "./seat.ts";
import { rangeOver, reachWithin, solve, type TargetObjection } from "./solve.ts";
import { rounding } from "./standing.ts";
import { deepestOn, stationsOf } from "./station.ts";
import { topRise } from "./top.ts";

/** An instrument with its shim or spacer found and every sphere it needs in place. */
interface Solved {
  readonly givens: Givens;
  readonly reach: Reach;
  /** The shim's thickness, or with a seat the spacer's. */
  readonly part: number;
  readonly dome: Dome;
  readonly back: Dome;
}

type SolvedResult =
  | { readonly ok: true; readonly solved: Solved }
  | { readonly ok: false; readonly objection: TargetObjection };

/**
 * Everything that follows from an instrument as its schema yields it: the shim its target asks for (or
 * the spacer, where the seat is sanded on the glued top), and what that does. Refuses, naming one field and
 * the nearest value of it that works, when tail, saddle and break or seat do not lie in order, a sphere ends short of the rim, or the target is out of
 * reach. `stationEvery` is the stations' spacing along the edge, mm.
 */
export function profileOf(instrument: Instrument, { stationEvery = 25 } = {}): ProfileResult {
  const result = solvedOf(instrument);
  if (result.ok) return { ok: true, profile: profileFrom(result.solved, stationEvery) };
  return { ok: false, refusal: refusalOf(instrument, result.objection) };
}

/** Whether `profileOf` gives a profile, found without working it out: a hundred times quicker. */
export const hasProfile = (instrument: Instrument): boolean => solvedOf(instrument).ok;

/** What is offered works when it is put in; where one field alone does not mend it, the sentence names the other. */
function refusalOf(instrument: Instrument, objection: TargetObjection): Refusal {
  const { field, why } = objection;
  const nearest = mendOf(instrument, objection);
  const other = nearest === null ? otherFault(instrument, objection) : null;
  if (other === null) return { field, why, nearest };
  const [one, two] = [field, other].map((path) => fieldAt(path, instrument.target.kind).label);
  return { field, why: [...why, ` ${one} alone will not mend it: change ${two} too.`], nearest };
}

/** The nearest value of the field to blame that works; a target's is looked for from the near end of its reach to the far one. */
function mendOf(instrument: Instrument, { field, reach }: TargetObjection): number | null {
  const works = (changed: Instrument): boolean => solvedOf(changed).ok;
  if (reach === undefined) return nearestWorking(instrument, field, works);
  if (reach.nearest === null) return null;
  const moved = writeField(instrument, field, reach.nearest);
  return works(moved) ? reach.nearest : nearestWorking(moved, field, works, reach.range);
}

/** The field to blame once the one named is put past blame; null where it cannot be. */
function otherFault(instrument: Instrument, { field, reach }: TargetObjection): FieldPath | null {
  const faultOf = (changed: Instrument): FieldPath | null => {
    const result = solvedOf(changed);
    return result.ok ? null : result.objection.field;
  };
  const past =
    reach === undefined
      ? nearestWorking(instrument, field, (changed) => faultOf(changed) !== field)
      : reach.nearest;
  return past === null ? null : faultOf(writeField(instrument, field, past));
}

function solvedOf(instrument: Instrument): SolvedResult {
  const set = givensOf(instrument);
  if (!set.ok) return set;
  const { givens } = set;
  const solution = solve(givens);
  if (!solution.ok) return solution;
  const reached = reachOf(givens);
  if (!reached.ok) return reached;
  const { part, dome } = solution.solution;
  const back = backOf(givens, dome);
  if (back === null) {
    const why = phrase`A back this round ends short of the rim.`;
    return { ok: false, objection: { field: "body.backRadius", why } };
  }
  return { ok: true, solved: { givens, reach: reached.reach, part, dome, back } };
}

function profileFrom(solved: Solved, stationEvery: number): Profile {
  const { givens, dome, back } = solved;
  const { part, ...chain } = chainOf(givens, dome, solved.part);
  const outcomes: Outcomes = {
    ...chain,
    stringExposure: exposuresAcross(givens, chain.bridgeClearance, topRise(givens, dome)),
    chordPitch: degrees(Math.atan((datumHeight(givens, dome) + chain.tailDrop) / givens.breakX)),
    ...rimOf(solved, chain.pitch),
    saddleX: givens.saddleX,
    fingerboardEndX: fingerboardEndX(givens.instrument),
  };
  const rim = { givens, dome, back, pitch: outcomes.pitch };
  const [bass, treble] = givens.halves;
  const shape = {
    stockWidth:
      Math.max(...givens.halves.map((half) => deepestOn(rim, half).depth)) + outcomes.rimOffset,
    stations: stationsOf(rim, bass, stationEvery),
    trebleStations: treble === undefined ? null : stationsOf(rim, treble, stationEvery),
    dome,
    back,
  };
  const { heights, part: partRange } = rangesOf(solved);
  const checks = (own: BreakOutcomes | SeatOutcomes) =>
    checksOf(givens.instrument, { ...outcomes, ...own });
  if (givens.seat === null) {
    const own = breakOutcomes(solved, part);
    const reachable = { ...heights, shim: partRange, spacer: null };
    return { ...outcomes, ...own, reachable, ...shape, checks: checks(own) };
  }
  const own = seatOutcomes(givens, givens.seat, dome, part);
  const reachable = { ...heights, shim: null, spacer: partRange };
  return { ...outcomes, ...own, reachable, ...shape, checks: checks(own) };
}

/** What only a rim with a break has. */
function breakOutcomes({ givens, reach, dome }: Solved, shim: number): BreakOutcomes {
  const { breakX, breakHalfWidth, breakMiddle } = givens;
  const undercut = undercutOf(givens, dome);
  return {
    shim,
    cleanShim: cleanShimIn(givens, reach),
    breakX,
    breakHalfWidth,
    breakMiddle,
    dishUndercut: undercut?.value ?? null,
    dishUndercutX: undercut?.x ?? null,
    seat: null,
  };
}

/** What only a top with a seat has. */
function seatOutcomes(givens: Givens, seat: SeatPlace, dome: Dome, spacer: number): SeatOutcomes {
  const { outline, halves, instrument } = givens;
  const cut = cutOf(givens, seat, dome);
  const narrower = Math.min(...[seat.fromX, outline.length].map((x) => spanAt(halves, x).half));
  const thicknessLeft = instrument.seat.topThickness - cut.mostCut;
  return {
    shim: null,
    cleanShim: null,
    breakX: null,
    breakHalfWidth: null,
    breakMiddle: null,
    dishUndercut: null,
    dishUndercutX: null,
    seat: { spacer, bodyWidth: 2 * narrower, ...cut, thicknessLeft },
  };
}

/** The range of each target that can be had, that of the shim or spacer apart. */
function rangesOf({ givens, reach }: Solved) {
  const named = reachWithin(givens, reach);
  const range = (kind: TargetKind): Range => rangeOver(givens, named, kind);
  const heights = {
    pitch: range("pitch"),
    bridgeClearance: range("bridgeClearance"),
    saddleExposure: range("saddleExposure"),
    stringHeight: range("stringHeight"),
  };
  return { heights, part: range(anglePart[givens.instrument.dome.method]) };
}

function rimOf({ givens, dome }: Solved, pitch: number) {
  const overrun = overrunOf(givens, dome);
  const { most, least } = removalOver(givens, dome, pitch);
  const rimOffset = -least.value > rounding ? -least.value : 0;
  return {
    overrunLength: overrun.length,
    overrunDepth: overrun.depth,
    rimOffset,
    maxRemoval: most.value + rimOffset,
    maxRemovalX: most.x,
    leastRemovalX: least.x,
    maxRemovalArc: most.arc,
    leastRemovalArc: least.arc,
    maxRemovalSide: most.side,
    leastRemovalSide: least.side,
    dishNeeded: 2 * circleRadius(givens),
  };
}

/** Of the smallest circle round the domed part of the rim. */
function circleRadius(givens: Givens): number {
  const edges = givens.halves.map((half) => ({
    ...half,
    edge: edgeOf(half.outline, domedEnd(givens, half)),
  }));
  const [bass, treble] = edges;
  return treble === undefined && bass !== undefined
    ? enclosingCircle(bass.outline, bass.edge).radius
    : circleRound(edges).radius;
}
