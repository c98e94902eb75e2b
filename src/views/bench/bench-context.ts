import { shownPlan } from "../../store/document/plan.ts";
import { useRimwright } from "../store-context.ts";

/** The instrument worked on: the one last drawn. */
export function useWorkpiece() {
  return useRimwright(shownPlan);
}

/** Its record. */
export function useRecord() {
  return useRimwright((state) => state.asBuilt);
}

/** Today by the builder's own calendar. */
export function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
