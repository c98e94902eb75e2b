import { useMemo } from "react";
import { anglePart } from "../../instrument/outcome-fields.ts";
import type { Uncertainty } from "../../profile/uncertainty/uncertainty.ts";
import { type Comparison, drawCounts } from "../../store/document/comparison.ts";
import { plot } from "../../store/document/variant-edits.ts";
import type { UncertaintyJob } from "../../worker/messages.ts";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { Select } from "../fields/select.tsx";
import { ToleranceFields } from "../fields/tolerance-fields.tsx";
import { type NumberFormat, ValueEntry } from "../fields/value-entry.tsx";
import { counted, percent } from "../figures/chart-measures.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { type Running, useJob } from "../use-job.ts";
import { UncertaintyResult } from "./uncertainty-result.tsx";
import { useComparison, useNumbers } from "./use-comparison.ts";

const shapes = [
  ["normal", "normal, ± holds 95 %"],
  ["rectangular", "rectangular, ± holds all"],
] as const;

/** How likely the plan is to come out right, every measure off by its tolerance at once. */
export function UncertaintyPanel() {
  const base = useNumbers(useRimwright((state) => state.lastGood));
  const { sure } = useComparison();
  const edit = useEdit();
  const { shape, draws, seed } = sure;
  const job = useMemo<UncertaintyJob>(
    () => ({ kind: "uncertainty", draws, asked: { instrument: base, shape, seed } }),
    [base, shape, draws, seed],
  );
  const running = useJob<"uncertainty">(job);
  const change = (to: Partial<Comparison["sure"]>): void =>
    edit((state) => plot(state, (plots) => ({ sure: { ...plots.sure, ...to } })));
  const answer = running.progress?.answer ?? null;
  const part = anglePart[base.dome.method];
  return (
    <section
      className="uncertainty"
      aria-labelledby="uncertainty-heading"
      aria-busy={running.state === "running"}
    >
      <div className="panel-head">
        <h2 id="uncertainty-heading">How sure</h2>
      </div>
      <p className="panel-note">
        As built: the {part} is cut and stays as planned. Every measure, the {part} among them, is
        drawn at random within its tolerance, each apart from the rest.
      </p>
      <div className="panel-acts">
        <ChoiceButtons
          legend="Spread"
          options={shapes}
          value={shape}
          onChoose={(to) => change({ shape: to })}
        />
        <Select
          label="Draws"
          value={draws}
          options={drawCounts.map((count) => [count, counted(count)])}
          onChoose={(count) => change({ draws: count })}
        />
        <ValueEntry
          label="Seed"
          value={seed}
          format={seedFormat}
          onChange={(to) => to !== null && change({ seed: to })}
        />
      </div>
      <RunLine running={running} draws={draws} answer={answer} />
      {answer !== null && <UncertaintyResult uncertainty={answer} />}
      <details>
        <summary>Tolerances, ± on each measure</summary>
        <ToleranceFields />
      </details>
    </section>
  );
}

/** The same seed gives the same draws. */
const seedFormat: NumberFormat = {
  read: (text) =>
    /^\d{1,9}$/.test(text.trim())
      ? { ok: true, value: Number(text) }
      : { ok: false, why: "A seed is a whole number of up to nine digits." },
  show: String,
  unitAfter: () => "",
};

interface LineProps {
  readonly running: Running<"uncertainty">;
  readonly draws: number;
  readonly answer: Uncertainty | null;
}

function RunLine({ running, draws, answer }: LineProps) {
  const { state, progress, stop, again } = running;
  const going = state === "running" || state === "waiting";
  return (
    <div className="run-line">
      <progress
        aria-label="Draws made"
        max={1}
        value={
          going ? (progress?.share === 1 ? 0 : (progress?.share ?? 0)) : (progress?.share ?? 0)
        }
      />
      <span role="status">
        {going && `Drawing ${counted(draws)}…`}
        {state === "done" && answer !== null && `${counted(answer.draws)} drawn.`}
        {state === "done" &&
          answer === null &&
          "This plan does not hold when its measures are a little off."}
        {state === "stopped" && `Stopped at ${counted(answer?.draws ?? 0)} of ${counted(draws)}.`}
        {state === "failed" && "The drawing of lots could not be run in this browser."}
      </span>
      {going ? (
        <button type="button" onClick={stop}>
          Stop
        </button>
      ) : (
        <button type="button" onClick={again}>
          Draw again
        </button>
      )}
      {answer !== null && (
        <p className="all-windows">
          <strong>{percent(answer.chanceOfAll)}</strong> meet every window at once,{" "}
          {answer.outcomes.some(({ kind }) => kind === "thicknessLeft")
            ? "with some plate left."
            : "without an overrun."}
        </p>
      )}
    </div>
  );
}
