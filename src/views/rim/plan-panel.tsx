import { rimPlan } from "../../drawing/plan/rim-plan.ts";
import { endsSomewhere, planHeight } from "../../drawing/plan/rim-plan-layout.ts";
import { isDomed } from "../../profile/givens.ts";
import { type BodySide, onSide } from "../../profile/halves.ts";
import { type Station, stationsOn } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import { setLeftHanded } from "../../store/document/outline-edits.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { figure, measureFormat, unitName } from "../figures/measure-format.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { type Rim, RimFigure, type RimSide, sideNames } from "./rim-figure.tsx";

/** A line of the table: a station with what comes off there in all, and what it is known by. */
interface RimRow extends Pick<Station, "x" | "halfWidth" | "arcLength" | "sideDepth" | "zone"> {
  readonly names: readonly string[];
  readonly off: number;
}

/** Nearer than this along the side, two places are one, mm. */
const one = 0.5;

/** The stations of one side, and among them the places where most and least comes off, where they are on it. */
function rowsOf(rim: Rim, on: RimSide): readonly RimRow[] {
  const { profile } = rim;
  const { rimOffset, maxRemovalSide, leastRemovalSide } = profile;
  const here = (side: BodySide | null): boolean => side === null || side === on.half.side;
  const extremes = [
    ...(here(maxRemovalSide)
      ? [rowAt(rim, on, "most comes off", profile.maxRemovalX, profile.maxRemovalArc)]
      : []),
    ...(here(leastRemovalSide) && endsSomewhere(profile)
      ? [rowAt(rim, on, "least comes off", profile.leastRemovalX, profile.leastRemovalArc)]
      : []),
  ];
  const stations = stationsOn(profile, on.half.side);
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

function rowAt(
  { givens }: Rim,
  { half, side }: RimSide,
  name: string,
  x: number,
  arcLength: number,
): RimRow {
  return {
    names: [name],
    ...{ x, arcLength, halfWidth: half.outline.placeAtArc(arcLength)[1] },
    off: side.topAt(arcLength),
    sideDepth: side.backAt(arcLength) - side.topAt(arcLength),
    zone: isDomed(givens, x) ? "dome" : "flat",
  };
}

/** The stations in figures, in the order of the side from the tail seam. */
function StationTable({ rim, on }: { readonly rim: Rim; readonly on: RimSide }) {
  const units = useRimwright((state) => state.choices.units);
  return (
    <div className="rim-table">
      <table>
        <caption>
          {rim.sides.length > 1 && <b>{sideNames[on.half.side]}. </b>}
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
          {rowsOf(rim, on).map(({ names, arcLength, x, halfWidth, off, sideDepth, zone }) => (
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

/** What is drawn and printed turned over, for a left-handed instrument. */
function LeftHanded() {
  const leftHanded = useRimwright(({ instrument }) => instrument.body.leftHanded === true);
  const edit = useEdit();
  return (
    <label className="rim-check">
      <input
        type="checkbox"
        className="tick"
        checked={leftHanded}
        onChange={({ target }) => edit((state) => setLeftHanded(state, target.checked))}
      />{" "}
      Left-handed: drawn and printed the other way round
    </label>
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
          <LeftHanded />
          {rim.sides.map((on) => (
            <StationTable key={on.half.side} {...{ rim, on }} />
          ))}
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
  const deepest = neckEnd
    ? "at the neck end"
    : `${words.length(maxRemovalX)} from the tail${onSide(profile.maxRemovalSide)}`;
  return (
    <>
      <p>
        Most comes off {deepest}: {words.length(maxRemoval)}.{" "}
        {endsSomewhere(profile)
          ? `Least comes off ${words.length(leastRemovalX)} from the tail${onSide(profile.leastRemovalSide)}: sanding ends there last, so stop when the mark there is just gone.`
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
