import type { Instrument, Range } from "../../instrument/instrument.ts";
import { givensOf } from "../givens.ts";
import { solve } from "../solve.ts";
import { type OnStick, readyForSticks, type Stick } from "./on-stick.ts";
import { withContact } from "./shared-shim.ts";
import { changesFor, type FieldChange } from "./shared-shim-changes.ts";
import { type NoRange, type ShimRange, serves, shimRangeOf } from "./shim-range.ts";

/** The thickness an instrument's own plan asks of a stick, mm; null where it is made without one, or has no plan. */
export function wantedThickness(instrument: Instrument): number | null {
  if (instrument.dome.method === "seat") return null;
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const solution = solve(set.givens);
  return solution.ok ? solution.solution.part : null;
}

/** The stick owned that comes nearest to what is wanted, and what it costs. */
export interface NearestStick {
  /** Its place among those owned. */
  readonly index: number;
  /** The thickness wanted at this stick's width, mm. */
  readonly wanted: number;
  /** How much thicker it is than the one wanted, mm; negative: thinner. */
  readonly off: number;
  readonly serves: boolean;
  /** How much higher than planned the fret plane passes over the bridge, and how much taller the saddle stands, mm; null where the stick gives nothing. */
  readonly cost: Pick<OnStick, "bridgeClearance" | "saddleExposure"> | null;
}

/**
 * The stick owned to take: of those that serve the nearest in thickness to the one wanted, and where none
 * serves the nearest of all. Null where none is owned or none wanted.
 */
export function nearestStick(instrument: Instrument, owned: readonly Stick[]): NearestStick | null {
  const tried = owned.flatMap((stick, index) => {
    const on = atWidth(instrument, stick.width);
    const wanted = wantedThickness(on);
    if (wanted === null) return [];
    const isServing = serves(shimRangeOf(on), stick.thickness);
    return [{ index, wanted, off: stick.thickness - wanted, serves: isServing, stick }];
  });
  const [first, ...others] = tried;
  if (first === undefined) return null;
  const isBetter = (a: typeof first, b: typeof first): boolean =>
    a.serves === b.serves ? Math.abs(a.off) < Math.abs(b.off) : a.serves;
  const { stick, ...nearest } = others.reduce((a, b) => (isBetter(b, a) ? b : a), first);
  return { ...nearest, cost: costOf(instrument, stick, nearest.wanted) };
}

/** The instrument with a stick's own width under its rim; as it is where the stick has none. */
export const atWidth = (instrument: Instrument, width: number | null): Instrument =>
  width === null ? instrument : withContact(instrument, width);

function costOf(instrument: Instrument, stick: Stick, wanted: number): NearestStick["cost"] {
  const ready = readyForSticks(instrument, stick.width);
  const [got, planned] = [ready(stick.thickness), ready(wanted)];
  if (!got.ok || !planned.ok) return null;
  return {
    bridgeClearance: got.on.bridgeClearance - planned.on.bridgeClearance,
    saddleExposure: got.on.saddleExposure - planned.on.saddleExposure,
  };
}

/** What one instrument wants of sticks. */
export interface StickWants {
  /** The thickness its plan asks for at its own contact, mm; null where there is none. */
  readonly wanted: number | null;
  /** The thicknesses that serve it there. */
  readonly range: ShimRange | NoRange;
  readonly nearest: NearestStick | null;
}

export const stickWantsOf = (instrument: Instrument, owned: readonly Stick[]): StickWants => ({
  wanted: wantedThickness(instrument),
  range: shimRangeOf(instrument),
  nearest: nearestStick(instrument, owned),
});

/** The least change to bridge, fingerboard or break that lets a stick serve an instrument; null where it serves, or no one change is enough. */
export function cheapestChange(instrument: Instrument, stick: Stick): FieldChange | null {
  const on = atWidth(instrument, stick.width);
  const at: Range = [stick.thickness, stick.thickness];
  return serves(shimRangeOf(on), stick.thickness) ? null : (changesFor(on, at)[0] ?? null);
}
