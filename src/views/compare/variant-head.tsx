import type { Instrument } from "../../instrument/instrument.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { longestVariantName, type Variant } from "../../profile/comparison/variant.ts";
import { startFrom } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { solvedPlan } from "../../store/document/plan.ts";
import { makeBase, nameVariant } from "../../store/document/variant-edits.ts";
import { useEdit, useRimwright } from "../store-context.ts";

interface VariantHeadProps {
  readonly variant: Variant;
  readonly instrument: Instrument;
  readonly onRemove: (variant: Variant) => void;
}

/** A variant's name, and what can be made of it. */
export function VariantHead({ variant, instrument, onRemove }: VariantHeadProps) {
  const base = useRimwright((state) => state.instrument);
  const edit = useEdit();
  const { id, name } = variant;
  const sound = solvedPlan(instrument).ok;
  const spinOff = (): void => {
    const whole = { ...instrument, name: `${base.name}, ${name}`.slice(0, textLimits.name) };
    edit((state) => startFrom(state, whole, newId()));
  };
  return (
    <div className="variant-head">
      <input
        className="variant-name"
        aria-label="Name of the variant"
        value={name}
        maxLength={longestVariantName}
        onChange={({ target }) => edit((state) => nameVariant(state, id, target.value))}
      />
      <details className="variant-acts">
        <summary aria-label={`What to do with ${name}`}>⋯</summary>
        <div>
          <button
            type="button"
            disabled={!sound}
            onClick={() => edit((state) => makeBase(state, id))}
          >
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
