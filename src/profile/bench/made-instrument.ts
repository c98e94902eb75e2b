import type { Dome } from "../../geometry/dome.ts";
import type { Change, Offsets } from "../../instrument/as-built/as-built.ts";
import { writeField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { type Givens, givensOf } from "../givens.ts";
import { type Objection, type Profile, targetIn } from "../outcome.ts";
import { partUnder } from "../reach.ts";
import { type SaddleHeights, saddleHeights } from "../saddle.ts";
import { solve } from "../solve.ts";
import { topRise, topSlope, topZ } from "../top.ts";

/** An instrument as far as it is made, its shim (or spacer) stated, and the heights at the saddle that follow. mm. */
export interface MadeInstrument {
  /** The target is the shim (or spacer); where a gap was measured, the one that gap speaks for. */
  readonly instrument: Instrument;
  readonly givens: Givens;
  /** Null where no dome of this dish gives the measured gap. */
  readonly dome: Dome | null;
  readonly gap: number;
  readonly heights: SaddleHeights;
  readonly offsets: Offsets;
}

export type MadeResult =
  | { readonly ok: true; readonly made: MadeInstrument }
  | { readonly ok: false; readonly objection: Objection };

export const noOffsets: Offsets = { shim: 0, fretPlane: 0, stringHeight: 0, saddleExposure: 0 };

/**
 * What is made of an instrument whose target is its shim (or spacer), with the gap at the saddle line as measured
 * (null: as the shim makes it), its heights off the geometry by `offsets`. Objects as the core does.
 */
export function madeOf(instrument: Instrument, gap: number | null, offsets: Offsets): MadeResult {
  const set = givensOf(instrument);
  if (!set.ok) return set;
  const { givens } = set;
  if (gap !== null) return { ok: true, made: madeOnGap(givens, gap, offsets) };
  const solution = solve(givens);
  if (!solution.ok) return solution;
  const { dome } = solution.solution;
  const found = -topZ(givens, dome, givens.saddleX);
  const heights = heightsWithOffsets(givens, dome, found, offsets);
  return { ok: true, made: { instrument, givens, dome, gap: found, heights, offsets } };
}

/** A measured gap fixes the dome at the saddle line, whatever the shim was. */
function madeOnGap(givens: Givens, gap: number, offsets: Offsets): MadeInstrument {
  const { instrument } = givens;
  const clearance = givens.fretPlaneAtSaddle + gap - instrument.bridge.thickness;
  const aimed: Instrument = {
    ...instrument,
    target: { kind: "bridgeClearance", value: clearance },
  };
  const solution = solve({ ...givens, instrument: aimed });
  const dome = solution.ok ? solution.solution.dome : null;
  const part = dome === null ? instrument.target.value : partUnder(givens, dome);
  const standing = withPart(instrument, part);
  return {
    instrument: standing,
    givens: { ...givens, instrument: standing },
    dome,
    gap,
    heights: heightsWithOffsets(givens, dome, gap, offsets),
    offsets,
  };
}

/**
 * The heights the geometry gives, each moved by what was measured above it. Where no dome gives the
 * gap, the top at the saddle is taken to lie along the flat.
 */
export function heightsWithOffsets(
  givens: Givens,
  dome: Dome | null,
  gap: number,
  offsets: Offsets,
): SaddleHeights {
  const top =
    dome === null
      ? { slope: 0, riseTo: () => 0 }
      : { slope: topSlope(givens, dome), riseTo: topRise(givens, dome) };
  const raised = (by: number): SaddleHeights =>
    saddleHeights({ ...givens, fretPlaneAtSaddle: givens.fretPlaneAtSaddle + by }, gap, top);
  const plane = raised(offsets.fretPlane);
  const saddle = raised(offsets.fretPlane + offsets.saddleExposure);
  return {
    ...saddle,
    projection: plane.projection,
    bridgeClearance: plane.bridgeClearance,
    stringHeight: plane.stringHeight + offsets.stringHeight,
  };
}

const withPart = (instrument: Instrument, value: number): Instrument => ({
  ...instrument,
  target: { kind: anglePart[instrument.dome.method], value },
});

/** The instrument with its plan's shim (or spacer) for its target. */
export const withPlannedPart = (instrument: Instrument, plan: Profile): Instrument =>
  withPart(instrument, targetIn(plan, anglePart[instrument.dome.method]) ?? 0);

/** The instrument with the changes made; a changed shim (or spacer) is its target. */
export function changedBy(instrument: Instrument, changes: readonly Change[]): Instrument {
  let changed = instrument;
  for (const { path, value } of changes)
    changed = path === "target.value" ? withPart(changed, value) : writeField(changed, path, value);
  return changed;
}

const flatPaths: readonly FieldPath[] = ["target.value", "dome.flatLength", "seat.leastCut"];

/** Whether a change moves the flat or the seat, so that a gap measured before no longer holds. */
export const movesFlat = (changes: readonly Change[]): boolean =>
  changes.some(({ path }) => flatPaths.includes(path));

/** The instrument after changes, off the geometry by as much as before. */
export function madeAfter(made: MadeInstrument, changes: readonly Change[]): MadeResult {
  const instrument = changedBy(made.instrument, changes);
  return madeOf(instrument, movesFlat(changes) ? null : made.gap, made.offsets);
}
