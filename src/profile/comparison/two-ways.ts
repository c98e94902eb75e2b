import { domeZ } from "../../geometry/dome.ts";
import { type DomeMethod, domeMethods } from "../../instrument/dome-fields.ts";
import type { Instrument, Target } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { givensOf } from "../givens.ts";
import type { ProfileResult } from "../outcome.ts";
import { profileOf } from "../profile.ts";
import { raisedBy } from "./part-worth.ts";

/** One way to a flat seat on a domed top, asked for the same as the other. */
export interface Way {
  readonly method: DomeMethod;
  readonly result: ProfileResult;
  /** How much higher the saddle stands for 0.1 mm more of the shim or spacer, mm; null where that gives no plan. */
  readonly perTenth: number | null;
}

export interface TwoWays {
  /** What both are asked for. */
  readonly target: Target;
  readonly ways: readonly Way[];
  /** Most off the plate for the same and 1.5 mm more of saddle, mm; null where that cannot be had on a seat. */
  readonly cutHigher: number | null;
  /** How high over the flat the edge stands at the neck end where the whole rim is dished before the flat is sanded, mm; null where that gives none. */
  readonly dishedNeckEnd: number | null;
}

/** How much higher the strings are let stand where it is told what that would save of the plate, mm. */
export const higher = 1.5;

/**
 * An instrument by both methods. A target that is one method's own part is taken for the saddle that it
 * gives; null where it gives none.
 */
export function twoWaysOf(instrument: Instrument): TwoWays | null {
  const target = sharedTarget(instrument);
  if (target === null) return null;
  const ways = domeMethods.map((method): Way => {
    const own = byMethod(instrument, method, target);
    const result = profileOf(own);
    const perTenth = result.ok ? raisedBy(own, result.profile, 0.1) : null;
    return { method, result, perTenth };
  });
  return {
    target,
    ways,
    cutHigher: cutOfHigher(instrument, ways),
    dishedNeckEnd: dishedNeckEnd(byMethod(instrument, "break", target), ways),
  };
}

const byMethod = (instrument: Instrument, method: DomeMethod, target: Target): Instrument => ({
  ...instrument,
  dome: { ...instrument.dome, method },
  target,
});

function sharedTarget(instrument: Instrument): Target | null {
  const { target, dome } = instrument;
  if (target.kind !== anglePart[dome.method]) return target;
  const plan = profileOf(instrument);
  return plan.ok ? { kind: "saddleExposure", value: plan.profile.saddleExposure } : null;
}

function dishedNeckEnd(instrument: Instrument, ways: readonly Way[]): number | null {
  const own = ways.find(({ method }) => method === "break")?.result;
  const set = givensOf(instrument);
  if (own?.ok !== true || !set.ok) return null;
  const { outline } = set.givens;
  const z = domeZ(own.profile.dome, outline.length, outline.halfWidth(outline.length));
  return Number.isFinite(z) ? z : null;
}

function cutOfHigher(instrument: Instrument, ways: readonly Way[]): number | null {
  const own = ways.find(({ method }) => method === "seat")?.result;
  if (own?.ok !== true) return null;
  const value = own.profile.saddleExposure + higher;
  const raised = profileOf(byMethod(instrument, "seat", { kind: "saddleExposure", value }));
  return raised.ok ? (raised.profile.seat?.mostCut ?? null) : null;
}
