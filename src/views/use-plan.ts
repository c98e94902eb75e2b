import { useEffect, useRef, useState } from "react";
import { type ShownPlan, shownPlan } from "../store/document/plan.ts";
import { useRimwright } from "./store-context.ts";

/** What is drawn and told: the present plan, or the last one that worked. */
export function usePlan(): ShownPlan | null {
  return useRimwright(shownPlan);
}

/**
 * The same, for what may follow a frame behind, so that a keystroke and the shim it makes are painted
 * without waiting for it. It is never put off for a later key, as a transition would be: a held
 * stepper moves the drawing too. `atOnce`, it does not follow behind: a drawing must not lag behind the
 * hand that drags it.
 */
export function usePlanSoon(atOnce = false): ShownPlan | null {
  const plan = usePlan();
  const [shown, show] = useState(plan);
  const latest = useRef(plan);
  const waiting = useRef(false);
  useEffect(() => {
    latest.current = plan;
    if (plan === shown) return;
    if (atOnce) show(plan);
    if (atOnce || waiting.current) return;
    waiting.current = true;
    afterPaint(() => {
      waiting.current = false;
      show(latest.current);
    });
  }, [plan, shown, atOnce]);
  return atOnce ? plan : shown;
}

/** A frame's callbacks run before it is painted, and a timer set by one after. */
const afterPaint = (then: () => void): void => {
  requestAnimationFrame(() => setTimeout(then));
};
