import "./layout.css";
import { useEffect, useState, useSyncExternalStore } from "react";
import { chooseStretch, turnOver } from "../../store/document/choices.ts";
import { stretches } from "../../store/document/state.ts";
import { ErrorBoundary } from "../error-boundary.tsx";
import { Inputs } from "../fields/inputs.tsx";
import { latePart } from "../late-part.tsx";
import { useEdit, useRimwright } from "../store-context.ts";
import { AllNumbers } from "../verdict/all-numbers.tsx";
import { Checks } from "../verdict/checks.tsx";
import { PlanState } from "../verdict/plan-state.tsx";
import { Verdict } from "../verdict/verdict.tsx";
import { SectionFigure } from "./section-figure.tsx";

const FirstQuestions = latePart({
  what: "What a first visit is asked",
  load: () => import("./first-questions.tsx").then(({ FirstQuestions }) => FirstQuestions),
  // What stands under them must not move under a first tap.
  meanwhile: <div className="first-questions-room" />,
});

/** How the section is drawn. */
function DrawingTools() {
  const stretch = useRimwright((state) => state.choices.stretch);
  const turned = useRimwright((state) => state.choices.turned);
  const edit = useEdit();
  return (
    <div className="drawing-tools">
      <fieldset className="switch">
        <legend className="unseen">Heights</legend>
        {stretches.map((times) => (
          <button
            key={times}
            type="button"
            aria-pressed={stretch === times}
            aria-label={times === 1 ? "Heights true to scale" : `Heights ${times} times`}
            onClick={() => edit((state) => chooseStretch(state, times))}
          >
            {times}×
          </button>
        ))}
      </fieldset>
      <button type="button" aria-pressed={turned} onClick={() => edit(turnOver)}>
        Turn over
      </button>
      <a className="why-link" href="#/why">
        Why
      </a>
    </div>
  );
}

/** Whether a media query holds, where there are such; else not. */
function useMedia(query: string): boolean {
  const watch = (changed: () => void): (() => void) => {
    const list = window.matchMedia?.(query);
    list?.addEventListener("change", changed);
    return () => list?.removeEventListener("change", changed);
  };
  return useSyncExternalStore(watch, () => window.matchMedia?.(query).matches ?? false);
}

/** The inputs, and in sight of all of them the section and the verdict. */
export function LayoutView() {
  // A phone has no room for the tools between the drawing and the verdict.
  const phone = useMedia("(width < 600px)");
  const [full, setFull] = useState(false);
  const introduced = useRimwright((state) => state.choices.introduced);
  useEffect(() => {
    if (!full) return;
    const leave = ({ key }: KeyboardEvent): void => {
      if (key === "Escape") setFull(false);
    };
    addEventListener("keydown", leave);
    return () => removeEventListener("keydown", leave);
  }, [full]);
  return (
    <main className={`layout ${full ? "full" : ""} ${introduced ? "" : "first-visit"}`}>
      <div className="stage">
        <div className="pinned">
          <ErrorBoundary what="The drawing">
            <SectionFigure full={full} onFull={setFull} />
          </ErrorBoundary>
          {!phone && <DrawingTools />}
          <ErrorBoundary what="The verdict">
            <PlanState />
            <Verdict />
          </ErrorBoundary>
        </div>
        <div className="rest">
          {phone && <DrawingTools />}
          {!introduced && <FirstQuestions />}
          <ErrorBoundary what="The list of checks">
            <Checks />
            <AllNumbers />
          </ErrorBoundary>
        </div>
      </div>
      <div className="side">
        <Inputs />
      </div>
    </main>
  );
}
