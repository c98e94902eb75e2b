import { type ComponentType, useMemo } from "react";
import type { FieldPath } from "../../instrument/fields.ts";
import { mm, sayPhrase, sayQuantity } from "../../instrument/phrase.ts";
import { contactWorth } from "../../profile/contact-worth.ts";
import { targetWithinWindows } from "../../profile/target-within-windows.ts";
import { setField } from "../../store/document/edits.ts";
import { rangePhrase } from "../../store/document/plan.ts";
import { height } from "../figures/measures.ts";
import { latePart } from "../late-part.tsx";
import { useEdit, useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import { useHasFinished } from "../use-shop.ts";

/** The part of the target's reach that brings nothing else out of its window. */
function TargetRoom() {
  const units = useRimwright((state) => state.choices.units);
  const plan = usePlan();
  const range = useMemo(
    () => (plan === null ? null : targetWithinWindows(plan.instrument, plan.profile)),
    [plan],
  );
  if (plan === null) return null;
  if (range === null) return "No value of it keeps everything within its window.";
  const said = sayPhrase(rangePhrase(plan.instrument, "target.value", range), units);
  return `${said} keeps everything within its window.`;
}

/** What the width of the shim stick does at the bridge. */
function ContactWorth() {
  const units = useRimwright((state) => state.choices.units);
  const plan = usePlan();
  const worth = useMemo(
    () =>
      plan === null || plan.profile.seat !== null
        ? null
        : contactWorth(plan.instrument, plan.profile),
    [plan],
  );
  return worth === null ? null : `Worth ${height(worth, units)} at the bridge.`;
}

/** Whether the braces go with the dish, and where they do not, the way back. */
function BracesAndDish() {
  const units = useRimwright((state) => state.choices.units);
  const { dishRadius, braceRadius } = useRimwright((state) => state.instrument.dome);
  const edit = useEdit();
  if (dishRadius === braceRadius) return "Same as the dish, and changes with it.";
  const dish = dishRadius === null ? "none" : sayQuantity(mm(dishRadius), units);
  return (
    <>
      Not the dish’s radius ({dish}).{" "}
      <button
        type="button"
        onClick={() => edit((state) => setField(state, "dome.braceRadius", dishRadius))}
      >
        Same as the dish
      </button>
    </>
  );
}

/** Said beside the dish, where braces set apart would be out of sight. */
function BracesApart() {
  const units = useRimwright((state) => state.choices.units);
  const { dishRadius, braceRadius } = useRimwright((state) => state.instrument.dome);
  if (dishRadius === braceRadius) return null;
  return `Braces are set apart: ${braceRadius === null ? "flat" : sayQuantity(mm(braceRadius), units)}.`;
}

const SettlingLearnt = latePart({
  what: "What your own instruments settled by",
  load: () => import("./settling-offer.tsx").then((part) => part.SettlingLearnt),
});

/** What the builder's own finished instruments settled by. */
const OwnSettling = () => useHasFinished() && <SettlingLearnt />;

/** What follows from a field, or goes with it, said under it. */
export const fieldNotes: Readonly<Partial<Record<FieldPath, ComponentType>>> = {
  "target.value": TargetRoom,
  "dome.dishRadius": BracesApart,
  "dome.braceRadius": BracesAndDish,
  "shim.contact": ContactWorth,
  "strings.settling": OwnSettling,
};
