import { endsSomewhere } from "../../drawing/plan/rim-plan-layout.ts";
import type { Units } from "../../instrument/length.ts";
import { contactOf, givensOf } from "../../profile/givens.ts";
import type { ShownPlan } from "../../store/document/plan.ts";
import { dimension } from "../figures/measures.ts";

/** Where to mark the rim: each line from both ends, along the centreline and along the side. */
export function SheetMarks({ plan, units }: { plan: ShownPlan; units: Units }) {
  const { instrument, profile } = plan;
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const { outline, halves } = set.givens;
  const [, treble] = halves;
  const whole = outline.totalArc();
  // Of halves that differ each from the tail alone.
  const alongOf: readonly (readonly [string, (x: number) => number])[] =
    treble === undefined
      ? [
          ["tail", (x) => outline.arcLength(x)],
          ["neck", (x) => whole - outline.arcLength(x)],
        ]
      : [
          ["bass", (x) => outline.arcLength(x)],
          ["treble", (x) => treble.outline.arcLength(x)],
        ];
  const say = (mm: number): string => dimension(mm, units).replace(/ (mm|in)$/, "");
  // A traced outline has its waist where it has it, if anywhere.
  const waist = profile.stations.find(({ name }) => name === "waist");
  const rows: readonly (readonly [name: string, x: number])[] = [
    ...(profile.seat === null ? ([["Shim edge", contactOf(instrument)]] as const) : []),
    ["Saddle", profile.saddleX],
    ...(endsSomewhere(profile) ? ([["Sanded last", profile.leastRemovalX]] as const) : []),
    ...(waist === undefined ? [] : ([["Waist", waist.x]] as const)),
    profile.seat === null ? ["Break", profile.breakX] : ["Seat ends", profile.fingerboardEndX],
  ];
  return (
    <table className="sheet-marks" data-units={units}>
      <caption>Marks on the rim, {units === "mm" ? "mm" : "in"}</caption>
      <thead>
        <tr>
          <td rowSpan={2} />
          <th scope="colgroup" colSpan={2}>
            straight, from
          </th>
          <th scope="colgroup" colSpan={2}>
            {treble === undefined ? "along the side, from" : "along each side"}
          </th>
        </tr>
        <tr>
          <th scope="col">tail</th>
          <th scope="col">neck</th>
          {alongOf.map(([name]) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, x]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{say(x)}</td>
            <td>{say(outline.length - x)}</td>
            {alongOf.map(([along, at]) => (
              <td key={along}>{say(at(x))}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
