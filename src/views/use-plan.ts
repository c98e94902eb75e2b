import { useDeferredValue } from "react";
import { type ShownPlan, shownPlan } from "../store/plan.ts";
import { useRimwright } from "./store-context.ts";

/** What is drawn and told: the present plan, or the last one that worked. */
export function usePlan(): ShownPlan | null {
  return useRimwright(shownPlan);
}

/**
 * The same, for what may follow a frame behind, so that a keystroke and the shim it makes are painted
 * without waiting for it. While keys come faster than it can be drawn, only the last plan is.
 */
export function usePlanSoon(): ShownPlan | null {
  return useDeferredValue(usePlan());
}
