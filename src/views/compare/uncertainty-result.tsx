import { useState } from "react";
import { histogramChart } from "../../drawing/charts/histogram.ts";
import type { Units } from "../../instrument/length.ts";
import type { PerturbedOutcome } from "../../profile/uncertainty/perturbed-model.ts";
import type { OutcomeUncertainty, Uncertainty } from "../../profile/uncertainty/uncertainty.ts";
import { SaveSvg, SceneRoom } from "../figures/chart-figure.tsx";
import { outcomeMeasure, percent, saidRange } from "../figures/chart-measures.ts";
import { useRimwright } from "../store-context.ts";

const overrun = "Shim over the thinnest without overrun";

const measureOf = (kind: PerturbedOutcome, units: Units) =>
  kind === "cleanShimMargin"
    ? { ...outcomeMeasure("shim", units), name: overrun }
    : outcomeMeasure(kind, units);

/** Each outcome by both methods, and the draws of one of them. */
export function UncertaintyResult({ uncertainty }: { readonly uncertainty: Uncertainty }) {
  const units = useRimwright((state) => state.choices.units);
  const [kind, setKind] = useState<PerturbedOutcome>("saddleExposure");
  const chosen = uncertainty.outcomes.find((outcome) => outcome.kind === kind);
  return (
    <>
      {chosen !== undefined && <Draws chosen={chosen} units={units} />}
      <div className="table-room">
        <table className="plain-table">
          <thead>
            <tr>
              <th scope="col">Outcome</th>
              <th scope="col">planned</th>
              <th scope="col">u, by slopes</th>
              <th scope="col">u, drawn</th>
              <th scope="col">95 % drawn</th>
              <th scope="col">within its window</th>
            </tr>
          </thead>
          <tbody>
            {uncertainty.outcomes.map((outcome) => (
              <tr key={outcome.kind}>
                <th scope="row">
                  <button
                    type="button"
                    className="plain"
                    aria-pressed={outcome.kind === kind}
                    onClick={() => setKind(outcome.kind)}
                  >
                    {measureOf(outcome.kind, units).name}
                  </button>
                </th>
                <Figures outcome={outcome} units={units} />
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="panel-note">
        u is the standard uncertainty: about two guitars in three come out within one u of the plan.
        By slopes, it is summed from how much each measure moves the outcome; drawn, it is the
        spread of the random draws.
      </p>
      <Disagreement outcomes={uncertainty.outcomes} units={units} />
    </>
  );
}

function Draws({ chosen, units }: { readonly chosen: OutcomeUncertainty; readonly units: Units }) {
  const measure = measureOf(chosen.kind, units);
  const sheet = {
    measure,
    histogram: chosen.sampled.histogram,
    window: chosen.window,
    interval: chosen.sampled.interval,
    normal: chosen.first,
  };
  return (
    <figure className="draws">
      <figcaption>
        <span>
          {measure.name}: drawn, and dashed the first-order normal. The band is its window.
        </span>
        <SaveSvg what="draws" scene={histogramChart({ ...sheet, width: 640, height: 320 })} />
      </figcaption>
      <SceneRoom
        name="histogram"
        first={{ width: 540, height: 220 }}
        draw={(room) => histogramChart({ ...sheet, ...room })}
      />
    </figure>
  );
}

function Figures({
  outcome,
  units,
}: {
  readonly outcome: OutcomeUncertainty;
  readonly units: Units;
}) {
  const { kind, first, sampled, chance } = outcome;
  const measure = measureOf(kind, units);
  const { say } = measure;
  return (
    <>
      <td>{say(first.value)}</td>
      <td>{say(first.u)}</td>
      <td>{say(sampled.u)}</td>
      <td>{saidRange(sampled.interval, measure)}</td>
      <td>{percent(chance)}</td>
    </>
  );
}

/** Where the two methods do not say the same, and which to trust. */
function Disagreement({
  outcomes,
  units,
}: {
  readonly outcomes: readonly OutcomeUncertainty[];
  readonly units: Units;
}) {
  const apart = outcomes.filter(({ disagree }) => disagree);
  if (apart.length === 0)
    return (
      <p className="panel-note">
        Both methods give the same 95 % intervals, to within a tenth of u, the standard uncertainty.
      </p>
    );
  return (
    <ul className="disagreement">
      {apart.map(({ kind, first, sampled }) => {
        const measure = measureOf(kind, units);
        return (
          <li key={kind}>
            <strong>{measure.name}:</strong> the methods part. First order says{" "}
            {saidRange(first.interval, measure)}, the draws {saidRange(sampled.interval, measure)}.
            Go by the draws: one measure outweighs the rest, or the outcome bends within its
            tolerance.
          </li>
        );
      })}
    </ul>
  );
}
