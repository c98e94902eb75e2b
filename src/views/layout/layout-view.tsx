import { Fence } from "../fence.tsx";
import { Inputs } from "../fields/inputs.tsx";
import { useMedia } from "../use-media.ts";
import { AllNumbers } from "../verdict/all-numbers.tsx";
import { Checks } from "../verdict/checks.tsx";
import { PlanState } from "../verdict/plan-state.tsx";
import { Verdict } from "../verdict/verdict.tsx";
import { DrawingTools } from "./drawing-tools.tsx";
import "./layout.css";
import { SectionFigure } from "./section-figure.tsx";

/** The inputs, and in sight of all of them the section and the verdict. */
export function LayoutView() {
  // A phone has no room for the tools between the drawing and the verdict.
  const phone = useMedia("(width < 600px)");
  return (
    <main className="layout">
      <div className="stage">
        <div className="pinned">
          <Fence what="The drawing">
            <SectionFigure />
          </Fence>
          {!phone && <DrawingTools />}
          <Fence what="The verdict">
            <PlanState />
            <Verdict />
          </Fence>
        </div>
        <div className="rest">
          {phone && <DrawingTools />}
          <Fence what="The list of checks">
            <Checks />
            <AllNumbers />
          </Fence>
        </div>
      </div>
      <div className="side">
        <Inputs />
      </div>
    </main>
  );
}
