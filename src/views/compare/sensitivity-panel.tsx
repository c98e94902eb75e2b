import { useMemo } from "react";
import { barChart } from "../../drawing/charts/bars.ts";
import { fieldFigure } from "../../instrument/field-text.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Units } from "../../instrument/length.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { sayPhrase, sayQuantity } from "../../instrument/phrase.ts";
import { outcomeNames } from "../../profile/comparison/outcomes.ts";
import {
  type MovedOutcome,
  movedOutcomes,
  type Sensitivity,
  sensitivitiesOf,
} from "../../profile/comparison/sensitivity.ts";
import { plot } from "../../store/document/variant-edits.ts";
import { Select } from "../fields/select.tsx";
import { SaveSvg, SceneRoom } from "../figures/chart-figure.tsx";
import { difference, outcomeMeasure } from "../figures/chart-measures.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { useComparison, useNumbers } from "./use-comparison.ts";

const mostBars = 8;

/** How much each measure moves an outcome, the shim staying as it is. */
export function SensitivityPanel() {
  const base = useNumbers(useRimwright((state) => state.lastGood));
  const units = useRimwright((state) => state.choices.units);
  const { moved } = useComparison();
  const edit = useEdit();
  const found = useMemo(() => sensitivitiesOf(base, moved) ?? [], [base, moved]);
  const shown = found.filter(({ plusMinus }) => plusMinus > 0).slice(0, mostBars);
  const scene = (width: number) => sceneOf(shown, moved, units, width);
  return (
    <section className="sensitivity" aria-labelledby="sensitivity-heading">
      <div className="panel-head">
        <h2 id="sensitivity-heading">What matters</h2>
        <SaveSvg what="sensitivity" scene={scene(640)} />
      </div>
      <p className="panel-note">
        As built: the {anglePart[base.dome.method]} is cut and stays as planned. Each measure is off
        by its tolerance alone.
      </p>
      <div className="panel-acts">
        <Select
          label="Outcome"
          value={moved}
          options={movedKeys.map((key) => [key, outcomeNames[key][0]])}
          onChoose={(key) => edit((state) => plot(state, () => ({ moved: key })))}
        />
      </div>
      <SceneRoom
        name="bars"
        first={{ width: 540, height: 380 }}
        draw={({ width }) => scene(width)}
      />
      <ol className="sensitivity-words">
        {shown.map(({ path, says }) => (
          <li key={path}>{sayPhrase(says, units)}</li>
        ))}
      </ol>
      <details>
        <summary>Every measure, by the unit</summary>
        <div className="table-room">
          <table className="plain-table">
            <thead>
              <tr>
                <th scope="col">Measure</th>
                <th scope="col">for each</th>
                <th scope="col">moves it</th>
                <th scope="col">tolerance ±</th>
                <th scope="col">moves it</th>
              </tr>
            </thead>
            <tbody>
              {found.map((one) => (
                <UnitRow key={one.path} one={one} moved={moved} units={units} />
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </section>
  );
}

const movedKeys = Object.keys(movedOutcomes) as readonly MovedOutcome[];

interface RowProps {
  readonly one: Sensitivity;
  readonly moved: MovedOutcome;
  readonly units: Units;
}

function UnitRow({ one, moved, units }: RowProps) {
  const { path, label, unit, byUnit, plusMinus, byTolerance } = one;
  const by = (value: number): string => difference(moved, value, 0, units);
  const radius = fieldAt(path, "shim").usual === "ft";
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{radius ? "1 ft" : sayQuantity(unit, "mm")}</td>
      <td>{by(byUnit)}</td>
      <td>{plusMinus === 0 ? "" : fieldFigure(plusMinus, fieldAt(path, "shim"), "mm")}</td>
      <td>{plusMinus === 0 ? "" : by(byTolerance)}</td>
    </tr>
  );
}

function sceneOf(shown: readonly Sensitivity[], moved: MovedOutcome, units: Units, width: number) {
  const measure = outcomeMeasure(moved, units);
  return barChart({
    width,
    title: `Change of ${outcomeNames[moved][0].toLowerCase()} for each measure's tolerance, the largest first.`,
    measure: { ...measure, name: `Change of ${measure.name.toLowerCase()}` },
    band: null,
    rule: { at: 0, says: "" },
    bars: shown.map(({ path, label, plusMinus, byTolerance }) => ({
      name: `${label} +${sayQuantity({ value: plusMinus, as: fieldAt(path, "shim").quantity }, units)}`,
      from: Math.min(0, byTolerance),
      to: Math.max(0, byTolerance),
      low: difference(moved, byTolerance, 0, units),
      fill: byTolerance < 0 ? "flat" : "dome",
    })),
  });
}
