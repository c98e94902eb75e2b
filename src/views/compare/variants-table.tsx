import type { FieldPath } from "../../instrument/field.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { sayPhrase } from "../../instrument/say-phrase.ts";
import {
  type OutcomeKey,
  outcomeKeys,
  outcomeNames,
  windowOf,
} from "../../profile/sweep-outcome.ts";
import type { Variant } from "../../profile/variant.ts";
import { standing } from "../../profile/window.ts";
import { useRimwright } from "../store-context.ts";
import { Mark } from "../verdict/standing-mark.tsx";
import { AimCell } from "./aim-cell.tsx";
import { BaseCell, ChangeCell } from "./change-cell.tsx";
import { LineSample } from "./line-sample.tsx";
import { difference, outcomeMeasure } from "./measure-of.ts";
import type { Compared } from "./use-comparison.ts";
import { VariantHead } from "./variant-head.tsx";
import "./variants-table.css";

interface Props {
  readonly compared: readonly Compared[];
  /** The fields some variant changes. */
  readonly paths: readonly FieldPath[];
  readonly onRemove: (variant: Variant) => void;
}

/** Columns: the base and each variant. Rows: what is changed, then what follows. */
export function VariantsTable({ compared, paths, onRemove }: Props) {
  const kind = useRimwright((state) => state.instrument.target.kind);
  return (
    // A table wider than the page scrolls under its own first column.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: so that it can be scrolled by keyboard.
    <section className="table-room" tabIndex={0} aria-label="Table of variants">
      <table className="variants-table">
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Number</span>
            </th>
            {compared.map((column, i) => (
              <th scope="col" key={column.variant?.id ?? "base"}>
                <LineSample index={i} />
                {column.variant === null ? (
                  <strong className="base-name">Base</strong>
                ) : (
                  <VariantHead
                    variant={column.variant}
                    instrument={column.instrument}
                    onRemove={onRemove}
                  />
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody className="changed">
          <tr>
            <th scope="row">Aims for</th>
            {compared.map(({ variant, instrument }) => (
              <td key={variant?.id ?? "base"}>
                <AimCell variant={variant} instrument={instrument} />
              </td>
            ))}
          </tr>
          {paths.map((path) => (
            <tr key={path}>
              <th scope="row">{fieldAt(path, kind).label}</th>
              {compared.map(({ variant, instrument }) => (
                <td key={variant?.id ?? "base"}>
                  {variant === null ? (
                    <BaseCell path={path} />
                  ) : (
                    <ChangeCell path={path} variant={variant} instrument={instrument} />
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tbody>
          {outcomeKeys.map((key) => (
            <tr key={key}>
              <th scope="row">{outcomeNames[key][0]}</th>
              {compared.map((column, i) => (
                <td key={column.variant?.id ?? "base"}>
                  <OutcomeCell
                    column={column}
                    base={compared[0] ?? column}
                    outcome={key}
                    first={i === 0}
                  />
                </td>
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">Checks</th>
            {compared.map((column) => (
              <td key={column.variant?.id ?? "base"}>
                <ChecksCell column={column} />
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </section>
  );
}

interface OutcomeProps {
  readonly column: Compared;
  readonly base: Compared;
  readonly outcome: OutcomeKey;
  readonly first: boolean;
}

function OutcomeCell({ column: { plan, instrument }, base, outcome, first }: OutcomeProps) {
  const units = useRimwright((state) => state.choices.units);
  const value = plan.ok ? plan.profile[outcome] : null;
  if (value === null) return <span className="none">{plan.ok ? "none" : "–"}</span>;
  const window = windowOf(instrument, outcome);
  const from = base.plan.ok ? base.plan.profile[outcome] : null;
  const stands = window === null ? null : standing(value, window);
  return (
    <div className="outcome">
      <span className="figure">{outcomeMeasure(outcome, units).say(value)}</span>
      {!first && from !== null && (
        <span className="off">{difference(outcome, value, from, units)}</span>
      )}
      {stands !== null && (
        <span className={`standing standing-${stands}`}>
          <Mark of={stands} />
          {stands}
        </span>
      )}
    </div>
  );
}

function ChecksCell({ column: { plan } }: { readonly column: Compared }) {
  const units = useRimwright((state) => state.choices.units);
  if (!plan.ok) return <p className="refused">{sayPhrase(plan.refusal.why, units)}</p>;
  const counts = (["stop", "warn", "note"] as const).map(
    (grade) => [grade, plan.profile.checks.filter((check) => check.grade === grade)] as const,
  );
  const told = counts.filter(([, checks]) => checks.length > 0);
  if (told.length === 0) return <span className="none">nothing to say</span>;
  return (
    <ul className="check-counts">
      {told.map(([grade, checks]) => (
        <li key={grade} title={checks.map(({ means }) => sayPhrase(means, units)).join("\n")}>
          <Mark of={grade} /> {checks.length} {grade}
        </li>
      ))}
    </ul>
  );
}
