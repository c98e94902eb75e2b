import { measurementField } from "../../instrument/as-built/measurement-fields.ts";
import type { Range } from "../../instrument/instrument.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { type Goal, goals, type OutlookResult, outlookSaid } from "../../profile/bench/outlook.ts";
import { standing } from "../../profile/standing.ts";
import { type BenchPanel, benchPanels } from "../../store/shelf/shop.ts";
import { ErrorBoundary } from "../error-boundary.tsx";
import { Select } from "../fields/select.tsx";
import { height } from "../figures/measures.ts";
import { addStyles } from "../late-styles.ts";
import { useRimwright } from "../store-context.ts";
import { useShop, useShopEdit, useShopIsOpen } from "../use-shop.ts";
import { PlanState } from "../verdict/plan-state.tsx";
import { Mark } from "../verdict/standing-mark.tsx";
import styles from "./bench.css?inline";
import { useWorkpiece } from "./bench-context.ts";
import { Corrections } from "./corrections.tsx";
import { Learning } from "./learning.tsx";
import { StepsPanel } from "./steps-panel.tsx";
import { StringsPull } from "./strings-pull.tsx";
import { useOutlook, type Workpiece } from "./use-outlook.ts";
import { WakeLockLine } from "./wake-lock.tsx";

addStyles(styles);

const goalNames: Readonly<Record<Goal, string>> = {
  saddleExposure: "Saddle exposed",
  stringHeight: "String height",
  bridgeClearance: "Fret plane over the bridge",
};

/** What it will come to, in one sentence, always in sight. */
function OutlookLine() {
  const piece = useWorkpiece();
  return piece === null ? null : <Line {...piece} />;
}

function Line(piece: Workpiece) {
  const { record, result, goal } = useOutlook(piece);
  const units = useRimwright((state) => state.choices.units);
  const edit = useShopEdit();
  return (
    <section className="outlook" aria-label="Outlook">
      <p className="outlook-said" aria-live="polite">
        {result.ok
          ? sayPhrase(outlookSaid(result.outlook, record, goal), units)
          : `${blame(result)} ${sayPhrase(result.why, units)}`}
      </p>
      {result.ok && (
        <dl className="outlook-heights">
          {goals.map((one) => (
            <Height
              key={one}
              goal={one}
              value={result.outlook.heights[one]}
              window={piece.instrument.windows[one]}
            />
          ))}
        </dl>
      )}
      <div className="outlook-goal">
        <Select
          label="Judge by"
          value={goal}
          options={goals.map((one) => [one, goalNames[one]])}
          onChoose={(one) => edit((shop) => ({ ...shop, goal: one }))}
        />
      </div>
    </section>
  );
}

const words = {
  within: "within its window",
  close: "close to its window’s edge",
  outside: "outside its window",
} as const;

interface HeightProps {
  readonly goal: Goal;
  readonly value: number;
  readonly window: Range;
}

/** One height at the saddle, and how it stands to its window. */
function Height({ goal, value, window }: HeightProps) {
  const units = useRimwright((state) => state.choices.units);
  const stands = standing(value, window);
  return (
    <div>
      <dt>{goalNames[goal]}</dt>
      <dd>
        {height(value, units)}{" "}
        <span className={`standing standing-${stands}`}>
          <Mark of={stands} />
          {words[stands]}
        </span>
      </dd>
    </div>
  );
}

/** Which measurement does not go with the rest. */
const blame = ({ measurement }: Extract<OutlookResult, { ok: false }>): string =>
  measurement === null
    ? "There is no outlook."
    : `“${measurementField(measurement).label}” does not go with the rest.`;

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
