import { useState } from "react";
import { ErrorBoundary } from "../error-boundary.tsx";
import { addStyles } from "../late-styles.ts";
import { PlanState } from "../verdict/plan-state.tsx";
import { BracePanel } from "./brace-panel.tsx";
import { PlanPanel } from "./plan-panel.tsx";
import styles from "./rim.css?inline";
import { useRim } from "./rim-figure.tsx";
import { SidePanel } from "./side-panel.tsx";
import { StringsPanel } from "./strings-panel.tsx";
import { TracingPanel } from "./tracing-panel.tsx";

addStyles(styles);

/** mm of edge between stations, unless another is chosen. */
const usualSpacing = 25;

/** The rim in plan, its side unrolled, the braces that go with it, and the outline it all follows. */
export function RimView() {
  const [spacing, setSpacing] = useState(usualSpacing);
  const rim = useRim(spacing);
  return (
    <main className="rim">
      <PlanState />
      {rim === null ? (
        <p>There is no rim to draw yet: Layout says what to fix.</p>
      ) : (
        <>
          <ErrorBoundary what="The plan">
            <PlanPanel rim={rim} spacing={spacing} onSpacing={setSpacing} />
          </ErrorBoundary>
          <ErrorBoundary what="The side pattern">
            <SidePanel rim={rim} />
          </ErrorBoundary>
          <ErrorBoundary what="The strings">
            <StringsPanel rim={rim} />
          </ErrorBoundary>
          <ErrorBoundary what="The list of braces">
            <BracePanel rim={rim} />
          </ErrorBoundary>
        </>
      )}
      <ErrorBoundary what="The tracing">
        <TracingPanel />
      </ErrorBoundary>
    </main>
  );
}
