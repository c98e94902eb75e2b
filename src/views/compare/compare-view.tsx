import { Fence } from "../error-boundary.tsx";
import "./compare.css";
import { MapPanel } from "./map-panel.tsx";
import { OverlayFigure } from "./overlay-figure.tsx";
import { SharedShimPanel } from "./shared-shim-panel.tsx";
import "./plain-table.css";
import { SensitivityPanel } from "./sensitivity-panel.tsx";
import { useShopInstruments } from "./shared-shim-panel.tsx";
import { SweepPanel } from "./sweep-panel.tsx";
import { UncertaintyPanel } from "./uncertainty-panel.tsx";
import { VariantsPanel } from "./variants-panel.tsx";

/** What each choice does, before the first stroke: variants, sweeps, what matters, how sure, one shim for several. */
export function CompareView() {
  const instruments = useShopInstruments();
  return (
    <main className="compare">
      <Fence what="The table of variants">
        <VariantsPanel />
      </Fence>
      <Fence what="The drawing of the variants">
        <OverlayFigure />
      </Fence>
      <div className="compare-pair">
        <Fence what="The sweep">
          <SweepPanel />
        </Fence>
        <Fence what="The map">
          <MapPanel />
        </Fence>
      </div>
      <div className="compare-pair">
        <Fence what="The list of what matters">
          <SensitivityPanel />
        </Fence>
        <Fence what="How sure it is">
          <UncertaintyPanel />
        </Fence>
      </div>
      <Fence what="The shop’s one shim">
        <SharedShimPanel instruments={instruments} />
      </Fence>
    </main>
  );
}
