import { useMemo, useState } from "react";
import type { Frame } from "../../drawing/frame.ts";
import { type Section, sectionOf } from "../../drawing/section/section.ts";
import { givensOf } from "../../profile/givens.ts";
import type { ShownPlan } from "../../store/document/plan.ts";
import type { Choices } from "../../store/document/state.ts";
import { angle, dimension } from "../figures/measures.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { useRimwright } from "../store-context.ts";
import { usePlanSoon } from "../use-plan.ts";
import { Handles } from "./handles.tsx";
import "./section.css";
import { type Room, useRoom } from "../figures/use-room.ts";

/** The live section, with what can be taken hold of in it. */
export function SectionFigure() {
  const choices = useRimwright((state) => state.choices);
  const [element, room] = useRoom({ width: 760, height: 320 });
  const [hold, setHold] = useState<Frame | null>(null);
  const plan = usePlanSoon(hold !== null);
  const section = useMemo(
    () => (plan === null ? null : drawn(plan, choices, room, hold)),
    [plan, choices, room, hold],
  );
  return (
    <figure className="section">
      <div className="section-room" ref={element}>
        {section !== null && (
          <>
            <SceneFigure scene={section.scene} />
            {plan?.refusal === null && <Handles section={section} plan={plan} onHold={setHold} />}
          </>
        )}
      </div>
    </figure>
  );
}

function drawn(plan: ShownPlan, choices: Choices, room: Room, hold: Frame | null): Section | null {
  const set = givensOf(plan.instrument);
  if (!set.ok) return null;
  const { units, stretch, turned } = choices;
  const words = {
    length: (mm: number) => dimension(mm, units),
    angle,
    unit: units === "mm" ? "mm" : "inch",
  } as const;
  return sectionOf(set.givens, plan.profile, {
    ...room,
    stretch,
    turned,
    words,
    ...(hold === null ? {} : { hold }),
  });
}
