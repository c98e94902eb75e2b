import { type BenchPanel, benchPanels } from "../../store/shelf/shop.ts";
import { ErrorBoundary } from "../error-boundary.tsx";
import { PlanState } from "../verdict/plan-state.tsx";
import "./bench.css";
import { useShop, useShopEdit, useShopIsOpen, useWorkpiece } from "./bench-context.ts";
import { Corrections } from "./corrections.tsx";
import { Learning } from "./learning.tsx";
import { OutlookLine } from "./outlook-line.tsx";
import { StepsPanel } from "./steps-panel.tsx";
import { StringsPull } from "./strings-pull.tsx";
import { WakeLockLine } from "./wake-lock.tsx";

/** The work itself: one large step at a time, what was measured, and what is to be done about it. */
export function BenchView() {
  if (!useShopIsOpen()) return <p className="loading">Opening Bench…</p>;
  return (
    <main className="bench">
      <PlanState />
      <ErrorBoundary what="The outlook">
        <OutlookLine />
      </ErrorBoundary>
      <Panels />
      <Panel />
      <WakeLockLine />
    </main>
  );
}

const panelNames: Readonly<Record<BenchPanel, string>> = {
  work: "Work",
  corrections: "Corrections",
  learning: "Learning",
  pull: "Strings’ pull",
};

function Panels() {
  const panel = useShop((shop) => shop.panel);
  const edit = useShopEdit();
  return (
    <nav className="bench-panels" aria-label="At the bench">
      {benchPanels.map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={panel === one}
          onClick={() => edit((shop) => ({ ...shop, panel: one }))}
        >
          {panelNames[one]}
        </button>
      ))}
    </nav>
  );
}

function Panel() {
  const panel = useShop((shop) => shop.panel);
  const piece = useWorkpiece();
  if (piece === null) return null;
  const { instrument, profile } = piece;
  return (
    <ErrorBoundary key={panel} what={`The part “${panelNames[panel]}”`}>
      {panel === "work" && <StepsPanel instrument={instrument} profile={profile} />}
      {panel === "corrections" && <Corrections instrument={instrument} profile={profile} />}
      {panel === "learning" && <Learning instrument={instrument} profile={profile} />}
      {panel === "pull" && <StringsPull instrument={instrument} profile={profile} />}
    </ErrorBoundary>
  );
}
