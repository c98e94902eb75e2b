import { rimPlan } from "../../drawing/plan/rim-plan.ts";
import { endsSomewhere, planHeight } from "../../drawing/plan/rim-plan-layout.ts";
import { isDomed } from "../../profile/givens.ts";
import type { Station } from "../../profile/outcome.ts";
import { comesOffAt } from "../../profile/side.ts";
import { leastShown } from "../../profile/standing.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { figure, measureFormat, unitName } from "../figures/measure-format.ts";
import { useRimwright } from "../store-context.ts";
import { type Rim, RimFigure } from "./rim-figure.tsx";

/** A line of the table: a station with what comes off there in all, and what it is known by. */
interface RimRow extends Pick<Station, "x" | "halfWidth" | "arcLength" | "sideDepth" | "zone"> {
  readonly names: readonly string[];
  readonly off: number;
}

/** Nearer than this along the side, two places are one, mm. */
const one = 0.5;

/** The stations, and among them the places where most and least comes off. */
function rowsOf({ givens, profile, side }: Rim): readonly RimRow[] {
  const { stations, rimOffset, maxRemovalX, leastRemovalX } = profile;
  const extremes = [
    { name: "most comes off", x: maxRemovalX },
    ...(endsSomewhere(profile) ? [{ name: "least comes off", x: leastRemovalX }] : []),
  ].map(({ name, x }) => rowAt({ givens, profile, side }, name, x));
  const near = (row: RimRow, arc: number): boolean => Math.abs(row.arcLength - arc) < one;
  const rows = stations.map((station): RimRow => {
    const known = extremes.filter((row) => near(row, station.arcLength));
    const names = station.name === "" ? [] : [station.name];
    return {
      ...station,
      names: [...names, ...known.flatMap((row) => row.names)],
      off: station.removal + rimOffset,
    };
  });
  const apart = extremes.filter((row) => !stations.some(({ arcLength }) => near(row, arcLength)));
  return [...rows, ...apart].sort((a, b) => a.arcLength - b.arcLength);
}

function rowAt({ givens, profile, side }: Rim, name: string, x: number): RimRow {
  const { outline } = givens;
  const arcLength = outline.arcLength(x);
  return {
    names: [name],
    ...{ x, arcLength, halfWidth: outline.halfWidth(x) },
    off: comesOffAt(givens, profile, x, outline.halfWidth(x)),
    sideDepth: side.backAt(arcLength) - side.topAt(arcLength),
    zone: isDomed(givens, x) ? "dome" : "flat",
  };
}

/** The stations in figures, in the order of the side from the tail seam. */
function StationTable({ rim }: { readonly rim: Rim }) {
  const units = useRimwright((state) => state.choices.units);
  return (
    <div className="rim-table">
      <table>
        <caption>
          In {unitName(units)}. What comes off, off the level rim; depth, of the finished side.
        </caption>
        <thead>
          <tr>
            <th scope="col">Along the side</th>
            <th scope="col">From the tail</th>
            <th scope="col">Half width</th>
            <th scope="col">Comes off</th>
            <th scope="col">Side depth</th>
            <th scope="col">Zone</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(rim).map(({ names, arcLength, x, halfWidth, off, sideDepth, zone }) => (
            <tr
              key={`${names.join()} ${arcLength}`}
              data-landmark={names.length > 0 ? "" : undefined}
            >
              <th scope="row">
                {figure(arcLength, units)}
                {names.map((name) => (
                  <span key={name} className="rim-landmark">
                    {name}
                  </span>
                ))}
              </th>
              <td>{figure(x, units)}</td>
              <td>{figure(halfWidth, units)}</td>
              <td>{figure(Math.max(0, off), units)}</td>
              <td>{figure(sideDepth, units)}</td>
              <td>
                <span className={`rim-zone rim-${zone}`}>{zone}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface Props {
  readonly rim: Rim;
  readonly spacing: number;
  readonly onSpacing: (mm: number) => void;
}

/** Where and how much comes off, drawn and in figures. */
export function PlanPanel({ rim, spacing, onSpacing }: Props) {
  const { givens, profile } = rim;
  const units = useRimwright((state) => state.choices.units);
  const words = measureFormat(units);
  return (
    <section aria-labelledby="rim-plan">
      <h2 id="rim-plan">Plan</h2>
      <div className="rim-pair">
        <div className="rim-held">
          <RimFigure
            first={{ width: 760, height: 700 }}
            draw={(width) =>
              rimPlan(givens, profile, {
                width,
                height: planHeight(givens, profile, width),
                words,
              })
            }
          />
          <RimWords rim={rim} />
        </div>
        <div>
          <LengthEntry
            label="Stations every"
            value={spacing}
            least={5}
            most={500}
            onChange={(mm) => mm !== null && onSpacing(mm)}
          />
          <StationTable rim={rim} />
        </div>
      </div>
    </section>
  );
}

/** What the drawing's figures mean at the bench. */
function RimWords({ rim: { givens, profile } }: { readonly rim: Rim }) {
  const words = measureFormat(useRimwright((state) => state.choices.units));
  const { rimOffset, maxRemoval, maxRemovalX, leastRemovalX } = profile;
  const neckEnd = maxRemovalX > givens.outline.length - 1;
  const deepest = neckEnd ? "at the neck end" : `${words.length(maxRemovalX)} from the tail`;
  return (
    <>
      <p>
        Most comes off {deepest}: {words.length(maxRemoval)}.{" "}
        {endsSomewhere(profile)
          ? `Least comes off ${words.length(leastRemovalX)} from the tail: sanding ends there last, so stop when the mark there is just gone.`
          : "Nothing comes off between the tail and the break: the rim stays level there."}
      </p>
      {rimOffset > leastShown && (
        <p>
          {words.length(rimOffset)} of every figure comes off all round. The rim turns about the{" "}
          {profile.seat === null ? "break" : "neck end"} as it is sanded, and without that the dish
          would not reach the place of least removal. The strip for the sides, below, has it counted
          in.
        </p>
      )}
    </>
  );
}
