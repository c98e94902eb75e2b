import { isFieldPath } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { promote, type Variant } from "../../profile/comparison/variant.ts";
import { nameVariant } from "../../store/document/comparison.ts";
import { setField, setTarget, startFrom } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { planOf } from "../../store/document/plan.ts";
import { useAct, useRimwright } from "../store-context.ts";
import { useComparison } from "./use-comparison.ts";

interface VariantHeadProps {
  readonly variant: Variant;
  readonly instrument: Instrument;
  readonly onRemove: (variant: Variant) => void;
}

/** A variant's name, and what can be made of it. */
export function VariantHead({ variant, instrument, onRemove }: VariantHeadProps) {
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
