import { type ShownPlan, shownPlan } from "../store/document/plan.ts";
import { useRimwright } from "./store-context.ts";

/** What is drawn and told: the present plan, or the last one that worked. */
export function usePlan(): ShownPlan | null {
  return useRimwright(shownPlan);
}
