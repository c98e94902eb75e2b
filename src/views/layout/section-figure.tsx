import { useMemo, useState } from "react";
import type { Frame } from "../../drawing/frame.ts";
import { type Section, sectionOf } from "../../drawing/section/section.ts";
import { givensOf } from "../../profile/givens.ts";
import type { ShownPlan } from "../../store/document/plan.ts";
import type { Choices } from "../../store/document/state.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { latePart } from "../late-part.tsx";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import "./section.css";
import { type Room, useRoom } from "../figures/use-room.ts";

interface Props {
  /** Whether the drawing fills the screen. */
  readonly full: boolean;
  readonly onFull: (full: boolean) => void;
}

/** The live section, with what can be taken hold of in it. A tap on it fills the screen, or gives it back. */
export function SectionFigure({ full, onFull }: Props) {
  const choices = useRimwright((state) => state.choices);
  const [element, room] = useRoom({ width: 760, height: 320 });
  const [hold, setHold] = useState<Frame | null>(null);
  const plan = usePlan();
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
            <button
              type="button"
              className="enlarge"
              aria-label={full ? "Back to the numbers" : "Fill the screen with the drawing"}
              onClick={() => onFull(!full)}
            >
              <svg viewBox="0 0 20 20" aria-hidden="true">
                <path d={full ? inward : outward} />
              </svg>
            </button>
            {plan?.refusal === null && <Handles section={section} plan={plan} onHold={setHold} />}
          </>
        )}
      </div>
    </figure>
  );
}

const Handles = latePart({
  what: "What moves the drawing by hand",
  load: () => import("./handles.tsx").then(({ Handles }) => Handles),
});

/** Arrows out to two corners, and in from them. */
const outward = "M12 2 H18 V8 M18 2 L11 9 M8 18 H2 V12 M2 18 L9 11";
const inward = "M18 8 H12 V2 M12 8 L19 1 M2 12 H8 V18 M8 12 L1 19";

function drawn(plan: ShownPlan, choices: Choices, room: Room, hold: Frame | null): Section | null {
  const set = givensOf(plan.instrument);
  if (!set.ok) return null;
  const { units, stretch, turned } = choices;
  return sectionOf(set.givens, plan.profile, {
    ...room,
    stretch,
    turned,
    words: measureFormat(units),
    ...(hold === null ? {} : { hold }),
  });
}
