import { barChart } from "../../drawing/charts/bars.ts";
import type { Units } from "../../instrument/length.ts";
import type { Member, SharedShim } from "../../profile/sticks/shared-shim.ts";
import type { FieldChange } from "../../profile/sticks/shared-shim-changes.ts";
import { serves } from "../../profile/sticks/shim-range.ts";
import type { SharedShimAnswer } from "../../worker/messages.ts";
import { SaveSvg, SceneRoom } from "../figures/chart-figure.tsx";
import { outcomeMeasure } from "../figures/chart-measures.ts";
import { nameOf } from "../find-names.ts";
import { useRimwright } from "../store-context.ts";
import { changeSaid, lengthSaid } from "./change-said.ts";
import { limiterNames } from "./stick-columns.ts";

interface Props {
  readonly answer: SharedShimAnswer;
  /** The thickness tried, mm. */
  readonly shim: number;
}

/** Who can work with which shims, the one with the most room, and what to change where there is none. */
export function SharedShimResult({ answer: { sharedShim, changes, forShim }, shim }: Props) {
  const units = useRimwright((state) => state.choices.units);
  if (sharedShim.members.length === 0)
    return <p className="stick-note">No instrument is ticked.</p>;
  const scene = (width: number) => sceneOf(sharedShim, shim, units, width);
  return (
    <div className="shared-shim-result">
      <div>
        <p className="shared-shim-verdict" role="status">
          {verdict(sharedShim, units)}
        </p>
        {sharedShim.shared === null && (
          <ul className="changes-to-serve">
            {changes.length === 0 && (
              <li>
                No change to one instrument alone makes one shim serve. Leave one out, or take two
                shims.
              </li>
            )}
            {changes.slice(0, 4).map((change) => (
              <li key={`${change.member} ${change.field}`}>
                {memberName(sharedShim.members[change.member])}: {changeSaid(change, units)} makes
                one shim serve.
              </li>
            ))}
          </ul>
        )}
        <h3>With the stick tried, {lengthSaid(shim, units)}</h3>
        <ul className="changes-to-serve">
          {sharedShim.members.map((member, i) => (
            <li key={member.instrument.id}>
              {memberName(member)}: {toServe(forShim[i], member, shim, units)}
            </li>
          ))}
        </ul>
      </div>
      <figure>
        <div className="stick-line">
          <h3>Shims that work for each</h3>
          <SaveSvg what="one-shim" scene={scene(640)} />
        </div>
        <SceneRoom
          name="bars"
          first={{ width: 540, height: 380 }}
          draw={({ width }) => scene(width)}
        />
      </figure>
    </div>
  );
}

const memberName = (member: Member | undefined): string =>
  member === undefined ? "None" : nameOf(member.instrument.name);

function verdict({ shared, limits, members, contact }: SharedShim, units: Units): string {
  const at = contact === null ? "" : `, its edge ${lengthSaid(contact, units)} from the tail end`;
  if (shared !== null) {
    const [low, high] = limits.map((i) => memberName(members[i]));
    return `A shim of ${lengthSaid(shared.shim, units)}${at} serves them all, with ${lengthSaid(shared.room, units)} of room either way. ${low} needs no less than ${lengthSaid(shared.low, units)}; ${high} takes no more than ${lengthSaid(shared.high, units)}.`;
  }
  const noStick = members.filter(({ range }) => range === "no-stick");
  if (noStick.length > 0)
    return `${noStick.map(memberName).join(", ")}: made without a stick, its seat is sanded on the top. Leave it out to find one for the others.`;
  const without = members.filter(({ range }) => typeof range === "string");
  if (without.length > 0)
    return `No shim serves ${without.map(memberName).join(", ")} at all${at}: its own windows do not go together, or it has no plan.`;
  const [low, high] = limits.map((i) => members[i]);
  return `No one shim serves them all${at}: ${memberName(low)} needs no less than ${lengthSaid(lowOf(low), units)}, and ${memberName(high)} takes no more than ${lengthSaid(highOf(high), units)}.`;
}

const lowOf = (member: Member | undefined): number =>
  member === undefined || typeof member.range === "string" ? Number.NaN : member.range.low.shim;
const highOf = (member: Member | undefined): number =>
  member === undefined || typeof member.range === "string" ? Number.NaN : member.range.high.shim;

function toServe(
  changes: readonly FieldChange[] | undefined,
  { range }: Member,
  shim: number,
  units: Units,
): string {
  if (serves(range, shim)) return "it serves as it is.";
  if (changes === undefined) return "…";
  if (changes.length === 0) return "no change of bridge, fingerboard or flat alone makes it serve.";
  return `${changes.map((change) => changeSaid(change, units)).join(", or ")}.`;
}

function sceneOf({ members, shared }: SharedShim, shim: number, units: Units, width: number) {
  const measure = outcomeMeasure("shim", units);
  return barChart({
    width,
    title: `Shims that work for each of ${members.length} instruments.`,
    measure,
    band: shared === null ? null : [shared.low, shared.high],
    rule: { at: shim, says: lengthSaid(shim, units) },
    bars: members.flatMap((member) => {
      const { range } = member;
      if (typeof range === "string") return [];
      const { low, high } = range;
      return [
        {
          name: memberName(member),
          from: low.shim,
          to: high.shim,
          low: limiterNames[low.by],
          ...(high.by === low.by ? {} : { high: limiterNames[high.by] }),
          fill: "flat" as const,
        },
      ];
    }),
  });
}
