import { useMemo } from "react";
import type { AsBuilt } from "../../instrument/as-built/as-built.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { type Goal, goalOf, type OutlookResult, outlookOf } from "../../profile/bench/outlook.ts";
import type { Profile } from "../../profile/outcome.ts";
import { useShop } from "../use-shop.ts";
import { useRecord } from "./bench-context.ts";

export interface Workpiece {
  readonly instrument: Instrument;
  readonly profile: Profile;
}

export interface Looked {
  readonly record: AsBuilt;
  readonly result: OutlookResult;
  readonly goal: Goal;
}

/** The outlook of the instrument from its record, and what it is held against. */
export function useOutlook({ instrument, profile }: Workpiece): Looked {
  const record = useRecord();
  const chosen = useShop((shop) => shop.goal);
  const result = useMemo(
    () => outlookOf(instrument, record, { ok: true, profile }),
    [instrument, record, profile],
  );
  return { record, result, goal: chosen ?? goalOf(instrument) };
}
