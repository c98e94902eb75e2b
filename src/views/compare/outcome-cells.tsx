import { sayPhrase } from "../../instrument/phrase.ts";
import { type OutcomeKey, outcomeIn, windowOf } from "../../profile/comparison/outcomes.ts";
import { standing } from "../../profile/standing.ts";
import { difference, outcomeMeasure } from "../figures/chart-measures.ts";
import { useRimwright } from "../store-context.ts";
import { gradeNames } from "../verdict/checks.tsx";
import { Mark } from "../verdict/standing-mark.tsx";
import type { Compared } from "./use-comparison.ts";

interface OutcomeProps {
  readonly column: Compared;
  readonly base: Compared;
  readonly outcome: OutcomeKey;
  readonly first: boolean;
}

/** An outcome with its difference from the base and how it stands to its window. */
export function OutcomeCell({ column: { plan, instrument }, base, outcome, first }: OutcomeProps) {
  const units = useRimwright((state) => state.choices.units);
  const value = plan.ok ? outcomeIn(plan.profile, outcome) : null;
  if (value === null) return <span className="none">{plan.ok ? "none" : "–"}</span>;
  const window = windowOf(instrument, outcome);
  const from = base.plan.ok ? outcomeIn(base.plan.profile, outcome) : null;
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

/** How many checks of each grade speak up; or why there is no plan. */
export function ChecksCell({ column: { plan } }: { readonly column: Compared }) {
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
        <li key={grade}>
          <details>
            <summary>
              <Mark of={grade} /> {gradeNames[grade]}: {checks.length}
            </summary>
            {checks.map(({ means }) => (
              <p key={sayPhrase(means, units)}>{sayPhrase(means, units)}</p>
            ))}
          </details>
        </li>
      ))}
    </ul>
  );
}
