import { useCallback, useMemo, useState } from "react";
import { ErrorBoundary } from "../error-boundary.tsx";
import { addStyles } from "../late-styles.ts";
import { useSame } from "../use-same.ts";
import { useShop, useShopIsOpen } from "../use-shop.ts";
import { OwnedPanel } from "./owned-panel.tsx";
import { SharedShimPanel } from "./shared-shim-panel.tsx";
import { SheetsRun } from "./sheets-run.tsx";
import { isRowServed } from "./stick-columns.ts";
import { StickRows } from "./stick-rows.tsx";
import styles from "./sticks.css?inline";
import { TrialPanel } from "./trial-panel.tsx";
import { useStickInstruments } from "./use-stick-instruments.ts";
import { useStickRows } from "./use-stick-rows.ts";
import { useTrialEdit } from "./use-sticks.ts";
import { WhichSticks } from "./which-sticks.tsx";

addStyles(styles);

/** What the shop's sticks do on each instrument, and which sticks its instruments want. */
export function SticksView() {
  return useShopIsOpen() ? (
    <OpenSticks />
  ) : (
    <main className="sticks">
      <p role="status">Opening the sticks…</p>
    </main>
  );
}

function OpenSticks() {
  const { stick, source, ticked } = useShop(({ trial }) => trial);
  const { owned } = useShop(({ sticks }) => sticks);
  const edit = useTrialEdit();
  const [isPrinting, setPrinting] = useState(false);
  const laid = useStickInstruments(source);
  const { rows, share, failed } = useStickRows(laid, stick, owned);
  const chosen = useMemo(() => (ticked === null ? null : new Set(ticked)), [ticked]);
  const isTicked = useCallback((id: string) => chosen === null || chosen.has(id), [chosen]);
  const counted = useMemo(
    () => rows.filter(({ instrument }) => isTicked(instrument.id)),
    [rows, isTicked],
  );
  const members = useSame(counted.map(({ instrument }) => instrument));
  if (isPrinting) {
    return (
      <main className="sticks">
        <SheetsRun instruments={members} onBack={() => setPrinting(false)} />
      </main>
    );
  }
  return (
    <main className="sticks">
      <div className="stick-pair">
        <TrialPanel served={counted.filter(isRowServed).length} of={counted.length} />
        <OwnedPanel />
      </div>
      <ErrorBoundary what="The table of instruments">
        <StickRows
          {...{ rows, isTicked, owned, stick, share, source }}
          tick={(ids) => edit({ ticked: ids })}
          models={laid.models}
          told={failed ? "This could not be worked out in this browser." : laid.told}
          onSource={(to) => edit({ source: to })}
          onSheets={() => setPrinting(true)}
        />
      </ErrorBoundary>
      <ErrorBoundary what="Which sticks to have">
        <WhichSticks
          rows={counted}
          ownsSome={owned.length > 0}
          onTry={(thickness) => edit({ stick: { thickness, width: null } })}
        />
      </ErrorBoundary>
      <ErrorBoundary what="The shop’s one shim">
        <SharedShimPanel instruments={members} shim={stick.thickness} />
      </ErrorBoundary>
    </main>
  );
}
