import { fieldFigure } from "../../instrument/field-text.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { formatLength, lengthFigure, nearest64, type Units } from "../../instrument/length.ts";
import { targetFields } from "../../instrument/outcome-fields.ts";
import { useGoToField } from "../fields/go-to-field.ts";
import { height } from "../figures/measures.ts";

interface Props {
  readonly instrument: Instrument;
  readonly shim: number;
  readonly units: Units;
}

/** The shim, to be read across the workshop: to 0.1 mm and to the nearest 1/64 in, the builder's own unit first. */
export function ShimFigure({ instrument, shim, units }: Props) {
  const metric = (
    <p key="mm" className="shim-figure">
      {lengthFigure(shim, { unit: "mm", decimals: 1, fixed: true })}
      <span>mm</span>
    </p>
  );
  const inch = (
    <p key="in" className="shim-figure">
      {lengthFigure(shim, { unit: "in", fraction: 64 })}
      <span>in</span>
    </p>
  );
  return (
    <section className="shim" aria-label="Shim">
      <h2>Shim under the tail</h2>
      <div className="shim-figures">{units === "mm" ? [metric, inch] : [inch, metric]}</div>
      <TargetLine instrument={instrument} units={units} />
    </section>
  );
}

function TargetLine({ instrument: { target }, units }: Pick<Props, "instrument" | "units">) {
  const goTo = useGoToField();
  const field = targetFields[target.kind];
  const value =
    field.quantity === "angle"
      ? `${fieldFigure(target.value, field, units)}°`
      : height(target.value, units);
  return (
    <button type="button" className="target-line" onClick={() => goTo("target.value")}>
      {target.kind === "shim" ? "as stated" : `for ${field.label.toLowerCase()} ${value}`}
    </button>
  );
}

/** The shim in one breath. */
export const sayShim = (shim: number): string =>
  `${formatLength(shim, { unit: "mm", decimals: 1, fixed: true })}, ${nearest64(shim)}`;
