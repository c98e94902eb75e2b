import { fieldAt } from "../../instrument/fields.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import type { Check } from "../../profile/outcome.ts";
import { useGoToField } from "../fields/go-to-field.ts";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import { linksOf } from "./links.ts";
import { Mark } from "./standing-mark.tsx";

/** What the grade of a check is called. */
export const gradeNames = { stop: "Stop", warn: "Caution", note: "Note" } as const;

/** What a builder should know before sanding, worst first. */
export function Checks() {
  const plan = usePlan();
  const units = useRimwright((state) => state.choices.units);
  if (plan === null) return null;
  const { checks } = plan.profile;
  const close = linksOf(plan.instrument, plan.profile, units).flatMap(({ name, window }) =>
    window?.standing === "close" ? [name.toLowerCase()] : [],
  );
  return (
    <section className="checks" aria-label="Checks">
      <h2>{heading(checks, close)}</h2>
      <ul>
        {checks.map((check) => (
          <CheckRow key={check.id} check={check} />
        ))}
      </ul>
    </section>
  );
}

function CheckRow({ check: { grade, field, means, fix } }: { readonly check: Check }) {
  const units = useRimwright((state) => state.choices.units);
  const kind = useRimwright((state) => state.instrument.target.kind);
  const goTo = useGoToField();
  const { label } = fieldAt(field, kind);
  return (
    <li className={`check check-${grade}`}>
      <p className="check-grade">
        <Mark of={grade} />
        {gradeNames[grade]}
      </p>
      <p>{sayPhrase(means, units)}</p>
      <p className="check-fix">{sayPhrase(fix, units)}</p>
      <button type="button" onClick={() => goTo(field)}>
        Go to {label.toLowerCase()}
      </button>
    </li>
  );
}

/** `close` names what is close to the edge of its window, which no check is about. */
function heading(checks: readonly Check[], close: readonly string[]): string {
  const grave = checks.filter(({ grade }) => grade !== "note").length;
  if (grave > 0) return grave === 1 ? "Checks: one thing to fix" : `Checks: ${grave} things to fix`;
  if (close.length > 0)
    return `Checks: nothing to fix; close to the edge of its window: ${close.join(", ")}`;
  return checks.length === 0 ? "Checks: nothing stands out" : "Checks: nothing to fix";
}
