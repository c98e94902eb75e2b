import "./variants-table.css";
import { compareLine } from "../../drawing/section/overlay.ts";
import type { FieldPath } from "../../instrument/field.ts";
import { fieldAt, isFieldPath } from "../../instrument/fields.ts";
import { type Instrument, type TargetKind, targetKinds } from "../../instrument/instrument.ts";
import { targetFields } from "../../instrument/outcome-fields.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import {
  type OutcomeKey,
  outcomeKeys,
  outcomeNames,
  windowOf,
} from "../../profile/comparison/outcomes.ts";
import { promote, type Variant } from "../../profile/comparison/variant.ts";
import { standing } from "../../profile/standing.ts";
import { aimVariant, nameVariant } from "../../store/document/comparison.ts";
import { setField, setTarget, startFrom, switchTarget } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { planOf } from "../../store/document/plan.ts";
import { useAct, useRimwright } from "../store-context.ts";
import { Mark } from "../verdict/standing-mark.tsx";
import { BaseCell, ChangeCell } from "./change-cell.tsx";
import { difference, outcomeMeasure } from "./measure-of.ts";
import { type Compared, useComparison } from "./use-comparison.ts";

interface AimCellProps {
  /** Null for the base. */
  readonly variant: Variant | null;
  readonly instrument: Instrument;
}

/** What a column aims for, and how much of it. Another kind starts at the value it has now. */
function AimCell({ variant, instrument }: AimCellProps) {
  const act = useAct();
  const [, edit] = useComparison();
  const { kind } = instrument.target;
  const aim = (next: TargetKind): void => {
    if (variant === null) {
      act((state) => switchTarget(state, next));
      return;
    }
    const plan = planOf(instrument);
    const value = plan.ok ? plan.profile[next] : targetFields[next].default;
    edit((comparison) => aimVariant(comparison, variant.id, { kind: next, value }));
  };
  return (
    <div className="aim">
      <select
        aria-label={`Aims for, ${variant === null ? "base" : variant.name}`}
        value={kind}
        onChange={({ target }) => {
          const next = targetKinds.find((one) => one === target.value);
          if (next !== undefined) aim(next);
        }}
      >
        {targetKinds.map((one) => (
          <option key={one} value={one}>
            {targetFields[one].label}
          </option>
        ))}
      </select>
      {variant === null ? (
        <BaseCell path="target.value" />
      ) : (
        <ChangeCell path="target.value" variant={variant} instrument={instrument} />
      )}
    </div>
  );
}

/** The line type a column is drawn in. */
function LineSample({ index }: { readonly index: number }) {
  return (
    <svg className="line-sample" viewBox="0 0 64 6" aria-hidden="true">
      <path className={`line-${compareLine(index)}`} d="M0,3L64,3" />
    </svg>
  );
}

interface VariantHeadProps {
  readonly variant: Variant;
  readonly instrument: Instrument;
  readonly onRemove: (variant: Variant) => void;
}

/** A variant's name, and what can be made of it. */
function VariantHead({ variant, instrument, onRemove }: VariantHeadProps) {
  const base = useRimwright((state) => state.instrument);
  const [comparison, edit] = useComparison();
  const act = useAct();
  const { id, name, changes } = variant;
  const sound = planOf(instrument).ok;
  const makeBase = (): void => {
    const promoted = promote(base, comparison.variants, id);
    if (promoted === null) return;
    const gesture = `promote ${id}`;
    act((state) => {
      const changed = Object.entries(changes).reduce(
        (so, [path, value]) =>
          isFieldPath(path) && value !== undefined ? setField(so, path, value, gesture) : so,
        state,
      );
      const { kind, value } = promoted.base.target;
      return setTarget(changed, kind, value, gesture);
    });
    edit((before) => ({ ...before, variants: promoted.variants }));
  };
  const spinOff = (): void => {
    const whole = { ...instrument, name: `${base.name}, ${name}`.slice(0, 200) };
    act((state) => startFrom(state, whole, newId()));
  };
  return (
    <div className="variant-head">
      <input
        className="variant-name"
        aria-label="Name of the variant"
        value={name}
        maxLength={60}
        onChange={({ target }) => edit((before) => nameVariant(before, id, target.value))}
      />
      <details className="variant-acts">
        <summary aria-label={`What to do with ${name}`}>⋯</summary>
        <div>
          <button type="button" disabled={!sound} onClick={makeBase}>
            Make it the base
          </button>
          <button type="button" disabled={!sound} onClick={spinOff}>
            Open as an instrument
          </button>
          <button type="button" onClick={() => onRemove(variant)}>
            Remove
          </button>
        </div>
      </details>
    </div>
  );
}

interface VariantsTableProps {
  readonly compared: readonly Compared[];
  /** The fields some variant changes. */
  readonly paths: readonly FieldPath[];
  readonly onRemove: (variant: Variant) => void;
}

/** Columns: the base and each variant. Rows: what is changed, then what follows. */
export function VariantsTable({ compared, paths, onRemove }: VariantsTableProps) {
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
