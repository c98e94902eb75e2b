import { type Instrument, type TargetKind, targetKinds } from "../../instrument/instrument.ts";
import { targetFields } from "../../instrument/outcome-fields.ts";
import type { Variant } from "../../profile/variant.ts";
import { aimVariant } from "../../store/compare.ts";
import { switchTarget } from "../../store/edits.ts";
import { planOf } from "../../store/plan.ts";
import { useAct } from "../store-context.ts";
import { BaseCell, ChangeCell } from "./change-cell.tsx";
import { useComparison } from "./use-comparison.ts";

interface Props {
  /** Null for the base. */
  readonly variant: Variant | null;
  readonly instrument: Instrument;
}

/** What a column aims for, and how much of it. Another kind starts at the value it has now. */
export function AimCell({ variant, instrument }: Props) {
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
