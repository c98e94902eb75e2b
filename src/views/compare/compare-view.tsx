import { ErrorBoundary } from "../error-boundary.tsx";
import { addStyles } from "../late-styles.ts";
import compareStyles from "./compare.css?inline";
import { MapPanel } from "./map-panel.tsx";
import { OverlayFigure } from "./overlay-figure.tsx";
import plainTableStyles from "./plain-table.css?inline";
import { SensitivityPanel } from "./sensitivity-panel.tsx";
import { SweepPanel } from "./sweep-panel.tsx";
import { TwoWaysPanel } from "./two-ways-panel.tsx";
import { UncertaintyPanel } from "./uncertainty-panel.tsx";
import { VariantsPanel } from "./variants-panel.tsx";

addStyles(compareStyles);
addStyles(plainTableStyles);

/** What each choice does, before the first stroke: variants, sweeps, what matters, how sure. */
export function CompareView() {
  return (
    <main className="compare">
      <ErrorBoundary what="The table of variants">
        <VariantsPanel />
      </ErrorBoundary>
      <ErrorBoundary what="The drawing of the variants">
        <OverlayFigure />
      </ErrorBoundary>
      <ErrorBoundary what="The two ways">
        <TwoWaysPanel />
      </ErrorBoundary>
      <div className="compare-pair">
        <ErrorBoundary what="The sweep">
          <SweepPanel />
        </ErrorBoundary>
        <ErrorBoundary what="The map">
          <MapPanel />
        </ErrorBoundary>
      </div>
      <div className="compare-pair">
        <ErrorBoundary what="The list of what matters">
          <SensitivityPanel />
        </ErrorBoundary>
        <ErrorBoundary what="How sure it is">
          <UncertaintyPanel />
        </ErrorBoundary>
      </div>
    </main>
  );
}
