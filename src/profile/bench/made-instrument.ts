import type { Dome } from "../../geometry/dome.ts";
import type { Change, Offsets } from "../../instrument/as-built/as-built.ts";
import { writeField } from "../../instrument/field-value.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Objection } from "../outcome.ts";
import { shimUnder } from "../reach.ts";
import { type SaddleHeights, saddleHeights } from "../saddle.ts";
import { type Setting, settingOf } from "../setting.ts";
import { solve } from "../solve.ts";
import { topSlope, topZ } from "../top.ts";

/** An instrument as far as it is made, its shim stated, and the heights at the saddle that follow. mm. */
export interface MadeInstrument {
  /** The target is the shim; where a gap was measured, the shim that gap speaks for. */
  readonly instrument: Instrument;
  readonly setting: Setting;
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
 * What is made of an instrument whose target is its shim, with the gap at the saddle line as measured
 * (null: as the shim makes it), its heights off the geometry by `offsets`. Objects as the core does.
 */
export function madeOf(instrument: Instrument, gap: number | null, offsets: Offsets): MadeResult {
  const set = settingOf(instrument);
  if (!set.ok) return set;
  const { setting } = set;
  if (gap !== null) return { ok: true, made: madeOnGap(setting, gap, offsets) };
  const solution = solve(setting);
  if (!solution.ok) return solution;
  const { dome } = solution.solution;
  const found = -topZ(setting, dome, setting.saddleX);
  const heights = heightsWithOffsets(setting, dome, found, offsets);
  return { ok: true, made: { instrument, setting, dome, gap: found, heights, offsets } };
}

/** A measured gap fixes the dome at the saddle line, whatever the shim was. */
function madeOnGap(setting: Setting, gap: number, offsets: Offsets): MadeInstrument {
  const { instrument } = setting;
  const clearance = setting.fretPlaneAtSaddle + gap - instrument.bridge.thickness;
  const aimed: Instrument = {
    ...instrument,
    target: { kind: "bridgeClearance", value: clearance },
  };
  const solution = solve({ ...setting, instrument: aimed });
  const dome = solution.ok ? solution.solution.dome : null;
  const shim = dome === null ? instrument.target.value : shimUnder(setting, dome);
  const standing: Instrument = { ...instrument, target: { kind: "shim", value: shim } };
  return {
    instrument: standing,
    setting: { ...setting, instrument: standing },
    dome,
    gap,
    heights: heightsWithOffsets(setting, dome, gap, offsets),
    offsets,
  };
}

/**
 * The heights the geometry gives, each moved by what was measured above it. Where no dome gives the
 * gap, the top at the saddle is taken to lie along the flat.
 */
export function heightsWithOffsets(
  setting: Setting,
  dome: Dome | null,
  gap: number,
  offsets: Offsets,
): SaddleHeights {
  const slope = dome === null ? 0 : topSlope(setting, dome);
  const raised = (by: number): SaddleHeights =>
    saddleHeights({ ...setting, fretPlaneAtSaddle: setting.fretPlaneAtSaddle + by }, gap, slope);
  const plane = raised(offsets.fretPlane);
  const saddle = raised(offsets.fretPlane + offsets.saddleExposure);
  return {
    ...saddle,
    projection: plane.projection,
    bridgeClearance: plane.bridgeClearance,
    stringHeight: plane.stringHeight + offsets.stringHeight,
  };
}

/** The instrument with the changes made; a changed shim is its target. */
export function changedBy(instrument: Instrument, changes: readonly Change[]): Instrument {
  let changed = instrument;
  for (const { path, value } of changes)
    changed =
      path === "target.value"
        ? { ...changed, target: { kind: "shim", value } }
        : writeField(changed, path, value);
  return changed;
}

/** Whether a change moves the flat, so that a gap measured before no longer holds. */
export const movesFlat = (changes: readonly Change[]): boolean =>
  changes.some(({ path }) => path === "target.value" || path === "dome.flatLength");

/** The instrument after changes, off the geometry by as much as before. */
export function madeAfter(made: MadeInstrument, changes: readonly Change[]): MadeResult {
  const instrument = changedBy(made.instrument, changes);
  return madeOf(instrument, movesFlat(changes) ? null : made.gap, made.offsets);
}
