import { unreadFields } from "../../store/document/field-view.ts";
import { latePart } from "../late-part.tsx";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";

const NotCurrent = latePart({
  what: "Why this is not the plan of what is typed",
  load: () => import("./not-current.tsx").then((part) => part.NotCurrent),
});

/** Says, when it is so, that what is shown is not what the fields state, and why. */
export function PlanState() {
  const refusal = usePlan()?.refusal ?? null;
  const unread = useRimwright(unreadFields);
  if (refusal === null && unread.length === 0) return null;
  return <NotCurrent refusal={refusal} unread={unread} />;
}
