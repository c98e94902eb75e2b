import { degrees } from "../geometry/circle.ts";
import { type Dome, domeZ } from "../geometry/dome.ts";
import { edgeOf } from "../geometry/outline/edge.ts";
import { enclosingCircle } from "../geometry/outline/enclosing-circle.ts";
import { writeField } from "../instrument/field-value.ts";
import { type FieldPath, fieldAt } from "../instrument/fields.ts";
import type { Instrument } from "../instrument/instrument.ts";
import { phrase } from "../instrument/phrase.ts";
import { backOf } from "./back.ts";
import { checksOf } from "./checks/checks.ts";
import { type Givens, givensOf } from "./givens.ts";
import { nearestWorking } from "./nearest.ts";
import { fingerboardEndX } from "./neck.ts";
import type { Outcomes, Profile, ProfileResult, Refusal } from "./outcome.ts";
import { overrunOf } from "./overrun.ts";
import { type Reach, reachOf } from "./reach.ts";
import { removalOver } from "./rim.ts";
import { exposuresAcross } from "./saddle.ts";
import { chainOf } from "./saddle-chain.ts";
import { reachableRange, solve, type TargetObjection } from "./solve.ts";
import { rounding } from "./standing.ts";
import { deepestPlace, stationsOf } from "./station.ts";

/** An instrument with its shim found and every sphere it needs in place. */
interface Solved {
  readonly givens: Givens;
  readonly reach: Reach;
  readonly shim: number;
  readonly dome: Dome;
  readonly back: Dome;
}

type SolvedResult =
  | { readonly ok: true; readonly solved: Solved }
  | { readonly ok: false; readonly objection: TargetObjection };

/**
 * Everything that follows from an instrument as its schema yields it: the shim its target asks for,
 * and what that shim does. Refuses, naming one field and the nearest value of it that works, when
 * tail, saddle and break do not lie in order, a sphere ends short of the rim, or the target is out of
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
  const { shim, dome } = solution.solution;
  const back = backOf(givens, -domeZ(dome, 0, 0));
  if (back === null) {
    const why = phrase`A back this round ends short of the rim.`;
    return { ok: false, objection: { field: "body.backRadius", why } };
  }
  return { ok: true, solved: { givens, reach: reached.reach, shim, dome, back } };
}

function profileFrom(solved: Solved, stationEvery: number): Profile {
  const { givens, reach, shim, dome, back } = solved;
  const chain = chainOf(givens, dome, shim);
  const outcomes: Outcomes = {
    ...chain,
    stringExposure: exposuresAcross(givens, chain.bridgeClearance),
    chordPitch: degrees(Math.atan(chain.tailDrop / givens.breakX)),
    ...rimOf(solved, chain.pitch),
    breakX: givens.breakX,
    breakHalfWidth: givens.breakHalfWidth,
    saddleX: givens.saddleX,
    fingerboardEndX: fingerboardEndX(givens.instrument),
    reachable: {
      pitch: reachableRange(givens, reach, "pitch"),
      bridgeClearance: reachableRange(givens, reach, "bridgeClearance"),
      saddleExposure: reachableRange(givens, reach, "saddleExposure"),
      stringHeight: reachableRange(givens, reach, "stringHeight"),
      shim: reachableRange(givens, reach, "shim"),
    },
  };
  const rim = { givens, dome, back, pitch: outcomes.pitch };
  return {
    ...outcomes,
    stockWidth: deepestPlace(rim).depth + outcomes.rimOffset,
    stations: stationsOf(rim, stationEvery),
    checks: checksOf(givens.instrument, outcomes),
    dome,
    back,
  };
}

function rimOf({ givens, reach, dome }: Solved, pitch: number) {
  const edge = edgeOf(givens.outline, givens.breakX);
  const overrun = overrunOf(givens, reach, dome, edge);
  const { most, least } = removalOver(givens, dome, pitch, edge);
  const rimOffset = -least.value > rounding ? -least.value : 0;
  return {
    overrunLength: overrun.length,
    overrunDepth: overrun.depth,
    cleanShim: overrun.cleanShim,
    rimOffset,
    maxRemoval: most.value + rimOffset,
    maxRemovalX: most.x,
    leastRemovalX: least.x,
    dishNeeded: 2 * enclosingCircle(givens.outline, edge).radius,
  };
}
