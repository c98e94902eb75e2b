import { barChart } from "../../drawing/charts/bars.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { formatLength, nearest64, type Units } from "../../instrument/length.ts";
import { outcomeNames } from "../../profile/comparison/outcomes.ts";
import type { Member, SharedShim } from "../../profile/sticks/shared-shim.ts";
import type { FieldChange } from "../../profile/sticks/shared-shim-changes.ts";
import type { Limiter } from "../../profile/sticks/shim-range.ts";
import type { SharedShimAnswer } from "../../worker/messages.ts";
import { useRimwright } from "../store-context.ts";
import { SaveSvg, SceneRoom } from "./chart-figure.tsx";
import { outcomeMeasure } from "./chart-measures.ts";

interface Props {
  readonly answer: SharedShimAnswer;
  readonly shim: number | null;
}

/** Who can work with which shims, the one with the most room, and what to change where there is none. */
export function SharedShimResult({ answer: { sharedShim, changes, forShim }, shim }: Props) {
  const units = useRimwright((state) => state.choices.units);
  if (sharedShim.members.length === 0)
    return <p className="panel-note">No instrument is chosen.</p>;
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
                {nameOf(sharedShim.members[change.member])}: {changeSaid(change, units)} makes one
                shim serve.
              </li>
            ))}
          </ul>
        )}
        {shim !== null && (
          <>
            <h3>With the shim I own, {said(shim, units)}</h3>
            <ul className="changes-to-serve">
              {sharedShim.members.map((member, i) => (
                <li key={member.instrument.id}>
                  {nameOf(member)}: {toServe(forShim[i], member, shim, units)}
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
      <figure>
        <div className="panel-head">
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

const said = (mm: number, units: Units): string =>
  units === "mm"
    ? formatLength(mm, { unit: "mm", decimals: 2 })
    : `${formatLength(mm, { unit: "in", decimals: 3 })} (${nearest64(mm)})`;

const nameOf = (member: Member | undefined): string =>
  member === undefined || member.instrument.name === "" ? "Unnamed" : member.instrument.name;

function verdict({ shared, limits, members, contact }: SharedShim, units: Units): string {
  const at = contact === null ? "" : `, its edge ${said(contact, units)} from the tail end`;
  if (shared !== null) {
    const [low, high] = limits.map((i) => nameOf(members[i]));
    return `A shim of ${said(shared.shim, units)}${at} serves them all, with ${said(shared.room, units)} of room either way. ${low} needs no less than ${said(shared.low, units)}; ${high} takes no more than ${said(shared.high, units)}.`;
  }
  const noStick = members.filter(({ range }) => range === "no-stick");
  if (noStick.length > 0)
    return `${noStick.map(nameOf).join(", ")}: made without a stick, its seat is sanded on the top. Leave it out to find one for the others.`;
  const without = members.filter(({ range }) => typeof range === "string");
  if (without.length > 0)
    return `No shim serves ${without.map(nameOf).join(", ")} at all${at}: its own windows do not go together, or it has no plan.`;
  const [low, high] = limits.map((i) => members[i]);
  return `No one shim serves them all${at}: ${nameOf(low)} needs no less than ${said(lowOf(low), units)}, and ${nameOf(high)} takes no more than ${said(highOf(high), units)}.`;
}

const lowOf = (member: Member | undefined): number =>
  member === undefined || typeof member.range === "string" ? Number.NaN : member.range.low.shim;
const highOf = (member: Member | undefined): number =>
  member === undefined || typeof member.range === "string" ? Number.NaN : member.range.high.shim;

function changeSaid({ field, from, to }: FieldChange, units: Units): string {
  const { label } = fieldAt(field, "shim");
  const more = to > from ? "more" : "less";
  return `${label.toLowerCase()} ${said(Math.abs(to - from), units)} ${more} (${said(to, units)})`;
}

function toServe(
  changes: readonly FieldChange[] | undefined,
  { range }: Member,
  shim: number,
  units: Units,
): string {
  if (typeof range !== "string" && range.low.shim <= shim && shim <= range.high.shim)
    return "it serves as it is.";
  if (changes === undefined) return "…";
  if (changes.length === 0) return "no change of bridge, fingerboard or flat alone makes it serve.";
  return `${changes.map((change) => changeSaid(change, units)).join(", or ")}.`;
}

const limiterNames: Readonly<Record<Limiter, string>> = {
  bridgeClearance: outcomeNames.bridgeClearance[0].toLowerCase(),
  saddleExposure: outcomeNames.saddleExposure[0].toLowerCase(),
  stringHeight: outcomeNames.stringHeight[0].toLowerCase(),
  breakAngle: outcomeNames.breakAngle[0].toLowerCase(),
  pitch: outcomeNames.pitch[0].toLowerCase(),
  overrun: "overrun",
  reach: "reach of the rim",
};

function sceneOf(
  { members, shared }: SharedShim,
  shim: number | null,
  units: Units,
  width: number,
) {
  const measure = outcomeMeasure("shim", units);
  const at = shared?.shim ?? shim;
  return barChart({
    width,
    title: `Shims that work for each of ${members.length} instruments.`,
    measure,
    band: shared === null ? null : [shared.low, shared.high],
    rule: at === null ? null : { at, says: `${said(at, units)}` },
    bars: members.flatMap((member) => {
      const { range } = member;
      if (typeof range === "string") return [];
      const { low, high } = range;
      return [
        {
          name: nameOf(member),
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
