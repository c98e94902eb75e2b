import type { Instrument, Range, WindowKind } from "../../instrument/instrument.ts";
import { windowKinds } from "../../instrument/outcome-fields.ts";
import { backOf } from "../back.ts";
import { givensOf } from "../givens.ts";
import type { Outcomes } from "../outcome.ts";
import { overrunOf } from "../overrun.ts";
import { domeFits, domeOnShim, reachOf } from "../reach.ts";
import { exposuresAcross } from "../saddle.ts";
import { chainOf } from "../saddle-chain.ts";
import { rounding, standing } from "../standing.ts";
import { topRise } from "../top.ts";
import { withContact } from "./shared-shim.ts";

/** A stick: how thick, and how far its inner edge lies from the tail end, both mm; null: as far as each instrument states. */
export interface Stick {
  readonly thickness: number;
  readonly width: number | null;
}

/** What a stick gives of one instrument, mm and degrees: what `profileOf` gives with the shim for a target, without the searches round the rim. */
export type OnStick = Pick<
  Outcomes,
  WindowKind | "stringExposure" | "overrunLength" | "overrunDepth"
>;

/** Why a stick gives nothing: the instrument is made without one, has no plan, or takes only those from `reach[0]` to `reach[1]` mm. */
type NotOnStick =
  | { readonly ok: false; readonly why: "no-stick"; readonly reach: null }
  | { readonly ok: false; readonly why: "no-plan"; readonly reach: null }
  | { readonly ok: false; readonly why: "out-of-reach"; readonly reach: Range };

export type OnStickResult = { readonly ok: true; readonly on: OnStick } | NotOnStick;

/** An instrument made ready for any thickness of stick: what does not depend on it is worked out once. */
export type ReadyForSticks = (thickness: number) => OnStickResult;

/** `width` as in a stick: null keeps the instrument's own contact. */
export function readyForSticks(instrument: Instrument, width: number | null): ReadyForSticks {
  if (instrument.dome.method === "seat") return () => ({ ok: false, why: "no-stick", reach: null });
  const set = givensOf(width === null ? instrument : withContact(instrument, width));
  const reached = set.ok ? reachOf(set.givens) : set;
  if (!set.ok || !reached.ok) return () => ({ ok: false, why: "no-plan", reach: null });
  const { givens } = set;
  const { thinnest, thickest, thinnestDome, thickestDome } = reached.reach;
  const domeOf = (thickness: number) => {
    if (Math.abs(thickness - thinnest) <= rounding) return thinnestDome;
    if (Math.abs(thickness - thickest) <= rounding) return thickestDome;
    const within = thinnest < thickness && thickness < thickest;
    const dome = within ? domeOnShim(givens, thickness) : null;
    return dome !== null && domeFits(givens, dome) ? dome : null;
  };
  return (thickness) => {
    const dome = domeOf(thickness);
    if (dome === null) return { ok: false, why: "out-of-reach", reach: [thinnest, thickest] };
    if (backOf(givens, dome) === null) return { ok: false, why: "no-plan", reach: null };
    const chain = chainOf(givens, dome, thickness);
    const overrun = overrunOf(givens, dome);
    const { pitch, bridgeClearance, stringHeight, saddleExposure, breakAngle } = chain;
    const stringExposure = exposuresAcross(givens, bridgeClearance, topRise(givens, dome));
    const [overrunLength, overrunDepth] = [overrun.length, overrun.depth];
    const windowed = { pitch, bridgeClearance, stringHeight, saddleExposure, breakAngle };
    return { ok: true, on: { ...windowed, stringExposure, overrunLength, overrunDepth } };
  };
}

/** Whether all that a stick gives is as its builder accepts: in every window, and no overrun. */
export const isServed = ({ windows }: Instrument, on: OnStick): boolean =>
  on.overrunLength === 0 &&
  windowKinds.every((kind) => standing(on[kind], windows[kind]) !== "outside");
