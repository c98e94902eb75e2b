import { compareLine } from "../../drawing/charts/overlay.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { outcomeKeys, outcomeNames } from "../../profile/comparison/outcomes.ts";
import type { Variant } from "../../profile/comparison/variant.ts";
import { strokeOf } from "../figures/scene-figure.tsx";
import { addStyles } from "../late-styles.ts";
import { useRimwright } from "../store-context.ts";
import { AimCell, BaseCell, ChangeCell, MethodCell } from "./input-cells.tsx";
import { ChecksCell, OutcomeCell } from "./outcome-cells.tsx";
import type { Compared } from "./use-comparison.ts";
import { VariantHead } from "./variant-head.tsx";
import styles from "./variants-table.css?inline";

addStyles(styles);

/** The line type a column is drawn in. */
function LineSample({ index }: { readonly index: number }) {
  return (
    <svg className="line-sample" viewBox="0 0 64 6" aria-hidden="true">
      <path {...strokeOf(compareLine(index))} d="M0,3L64,3" />
    </svg>
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
            <th scope="row">Where the flat is sanded</th>
            {compared.map(({ variant, instrument }) => (
              <td key={variant?.id ?? "base"}>
                <MethodCell variant={variant} instrument={instrument} />
              </td>
            ))}
          </tr>
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
