import { memo, type ReactNode } from "react";
import { appliesTo, type FieldGroup as Group, groupOf, pathsIn } from "../../instrument/fields.ts";
import { fold } from "../../store/document/choices.ts";
import { unreadFields } from "../../store/document/field-view.ts";
import { solvedPlan } from "../../store/document/plan.ts";
import type { State } from "../../store/document/state.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { FieldRow } from "./field-row.tsx";

interface Props {
  readonly group: Group;
  readonly heading: string;
  /** What stands in it; else its fields, one after the other. */
  readonly children?: ReactNode;
}

/** The fields of one group under a heading that folds them away. */
export const FieldGroup = memo(function FieldGroup({ group, heading, children }: Props) {
  const method = useRimwright((state) => state.instrument.dome.method);
  const folded = useRimwright((state) => state.choices.folded.includes(group));
  const troubled = useRimwright(
    (state) =>
      unreadFields(state).some((path) => groupOf(path) === group) ||
      refusedGroup(solvedPlan(state.instrument)) === group,
  );
  const fanIsSaid = useRimwright(saysOfFan);
  const edit = useEdit();
  const paths = pathsIn(group).filter(
    (path) => appliesTo(path, method) && (path !== "neck.fanFret" || fanIsSaid),
  );
  if (children === undefined && paths.length === 0) return null;
  return (
    <section className="group">
      <h2>
        <button
          type="button"
          aria-expanded={!folded}
          aria-controls={`group-${group}`}
          onClick={() => edit((state) => fold(state, group, !folded))}
        >
          <svg className="fold-mark" viewBox="0 0 12 12" aria-hidden="true">
            <path d={folded ? "M4 2 L8 6 L4 10" : "M2 4 L6 8 L10 4"} />
          </svg>
          {heading}
          {troubled && <span className="group-trouble">to fix</span>}
        </button>
      </h2>
      <div id={`group-${group}`} className="fields" hidden={folded}>
        {!folded && (children ?? paths.map((path) => <FieldRow key={path} path={path} />))}
      </div>
    </section>
  );
});

/** Without a fan its square fret has no row, unless something is typed there that is to be put right. */
const saysOfFan = (state: State): boolean =>
  state.instrument.neck.fan !== 0 || unreadFields(state).includes("neck.fanFret");

const refusedGroup = (plan: ReturnType<typeof solvedPlan>): Group | null =>
  plan.ok ? null : groupOf(plan.refusal.field);
