import type { Units } from "../../instrument/length.ts";
import type { ShownPlan } from "../../store/plan.ts";
import { linksOf } from "../verdict/links.ts";

/** Words that nobody reads as inches. */
const standingSaid = { in: "within", near: "just within", out: "OUT" } as const;

/** The chain from the shim to the strings, each with its window and how it stands to it, in words. */
export function SheetNumbers({ plan, units }: { plan: ShownPlan; units: Units }) {
  return (
    <table className="sheet-numbers">
      <thead>
        <tr>
          <th scope="col">Follows from it</th>
          <th scope="col">planned</th>
          <th scope="col">window</th>
        </tr>
      </thead>
      <tbody>
        {linksOf(plan.instrument, plan.profile, units).map(({ name, said, window }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{said}</td>
            <td>{window === null ? "" : `${window.said}, ${standingSaid[window.standing]}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
