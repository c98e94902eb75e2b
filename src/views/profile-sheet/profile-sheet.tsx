import { useMemo } from "react";
import { textWidth } from "../../drawing/lettering.ts";
import { rimPlan } from "../../drawing/plan/rim-plan.ts";
import { endsSomewhere, planHeight } from "../../drawing/plan/rim-plan-layout.ts";
import { sectionOf } from "../../drawing/section/section.ts";
import { formatRadius, lengthFigure, type Units } from "../../instrument/length.ts";
import { contactOf, givensOf } from "../../profile/givens.ts";
import { onSide } from "../../profile/halves.ts";
import type { Profile, SeatProfile } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import type { ShownPlan } from "../../store/document/plan.ts";
import { anglePartOf } from "../figures/angle-part.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { dimension, height } from "../figures/measures.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { addStyles } from "../late-styles.ts";
import { linksOf } from "../verdict/links.ts";
import { AddressCode } from "./address-code.tsx";
import { CheckBar } from "./check-bar.tsx";
import type { Paper } from "./paper.ts";
import styles from "./profile-sheet.css?inline";
import { SheetGiven } from "./sheet-given.tsx";
import { SheetMarks } from "./sheet-marks.tsx";

addStyles(styles);

/** The dish by its radius, and where it reaches last. */
function dishSaid({ instrument, profile }: ShownPlan, units: Units): string {
  const { dishRadius } = instrument.dome;
  const end = profile.seat === null ? "break" : "neck end";
  if (dishRadius === null)
    return `There is no dome: the rim stays flat from the tail to the ${end}.`;
  const dish = `Dish the rim, radius ${formatRadius(dishRadius, units)}, from the tail to the ${end}`;
  if (!endsSomewhere(profile)) return `${dish}.`;
  return `${dish}; it is sanded last ${dimension(profile.leastRemovalX, units)} from the tail${onSide(profile.leastRemovalSide)}.`;
}

/** Room to write what it came to beside what was planned. */
function SheetBlanks({ profile, units }: { profile: Profile; units: Units }) {
  const rows: readonly (readonly [string, number])[] = [
    profile.seat === null ? ["Shim used", profile.shim] : ["Spacer used", profile.seat.spacer],
    ["Straightedge gap", profile.flatGap],
    ["Fret plane over bridge", profile.bridgeClearance],
    ["String height", profile.stringHeight],
    ["Saddle exposed", profile.saddleExposure],
  ];
  return (
    <table className="sheet-blanks">
      <caption>As built</caption>
      <thead>
        <tr>
          <td />
          {rows.map(([name]) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">planned</th>
          {rows.map(([name, value]) => (
            <td key={name}>{height(value, units)}</td>
          ))}
        </tr>
        <tr className="sheet-blank">
          <th scope="row">measured</th>
          {rows.map(([name]) => (
            <td key={name} />
          ))}
        </tr>
      </tbody>
    </table>
  );
}

/** The chain from the shim to the strings, each with its window and how it stands to it, in words. */
function SheetNumbers({ plan, units }: { plan: ShownPlan; units: Units }) {
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
            <td>{window === null ? "" : `${window.said}, ${window.standing}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The order of work in short, with the figures to meet. */
function SheetWork({ plan, units }: { plan: ShownPlan; units: Units }) {
  const { instrument, profile } = plan;
  const say = (mm: number): string => height(mm, units);
  const { overrunLength, overrunDepth, flatGap } = profile;
  if (profile.seat !== null) return <SeatWork plan={plan} seat={profile.seat} units={units} />;
  return (
    <section className="sheet-work">
      <ol>
        <li>Level the rim. Mark the break from both ends.</li>
        <li>{dishSaid(plan, units)}</li>
        <li>
          Shim under the tail, its edge {dimension(contactOf(instrument), units)} from the tail end.
          Sand the flat on a board, up to the break and no farther.
        </li>
        <li>
          {overrunDepth >= leastShown
            ? `The flat runs ${dimension(overrunLength, units)} past the break, ${say(overrunDepth)} deep: feather it in the dish.`
            : "No overrun to be seen past the break."}
        </li>
        <li>
          After the glue-up a straightedge on the flat stands{" "}
          {flatGap >= 0 ? `${say(flatGap)} over` : `${say(-flatGap)} into`} the top at the saddle
          line.
        </li>
      </ol>
    </section>
  );
}

interface SeatWorkProps {
  readonly plan: ShownPlan;
  readonly seat: SeatProfile["seat"];
  readonly units: Units;
}

/** The same where the seat is sanded on the domed top. */
function SeatWork({ plan, seat, units }: SeatWorkProps) {
  const say = (mm: number): string => height(mm, units);
  return (
    <section className="sheet-work">
      <ol>
        <li>Level the rim.</li>
        <li>{dishSaid(plan, units)}</li>
        <li>Arch every brace, glue the top on domed all over, and let it rest a day.</li>
        <li>
          Spacer on the top at the saddle line, straight bar on it and on the neck end. Sand the
          seat to the bar: {say(seat.endCut)} off at the fingerboard’s end, {say(seat.neckEndCut)}{" "}
          at the neck end.
        </li>
        <li>
          Of the plate {seat.thicknessLeft > 0 ? say(seat.thicknessLeft) : "nothing"} is left where
          most is cut, over the upper transverse brace.
        </li>
      </ol>
    </section>
  );
}

/** The shim in both units, the builder's own first. */
function ShimFigures({ shim, units }: { shim: number; units: Units }) {
  const metric = (
    <p key="mm">
      <strong>{lengthFigure(shim, { unit: "mm", decimals: 1, fixed: true })}</strong> mm
    </p>
  );
  const inch = (
    <p key="in">
      <strong>{lengthFigure(shim, { unit: "in", fraction: 64 })}</strong> in
    </p>
  );
  return units === "mm" ? [metric, inch] : [inch, metric];
}

interface Props {
  readonly plan: ShownPlan;
  readonly units: Units;
  readonly paper: Paper;
}

/** CSS px of the page's type area: 190 mm at 96 px to the inch, so that drawings print at the size they are laid out for. */
const typeWidth = 718;
const planWidth = 424;
/** Room for the two drawings, and what of the section's a long name takes. */
const heights = {
  A4: { section: 246, plan: 350, name: 34 },
  Letter: { section: 196, plan: 334, name: 40 },
} as const;

/** px of a line that the date leaves the name, and the size it is set in there. A wider name is set smaller, in lines of its own, so that the sheet keeps its one page. */
const nameRoom = 470;
const nameSize = 19;

const isLong = (name: string): boolean => textWidth(name, nameSize, true) > nameRoom;

export function ProfileSheet({ plan, units, paper }: Props) {
  const { instrument, profile } = plan;
  const drawings = useMemo(() => drawingsOf(plan, units, paper), [plan, units, paper]);
  const { name } = instrument;
  const part = anglePartOf(profile);
  return (
    <article className={`sheet sheet-${paper.toLowerCase()}`} aria-label="Profile sheet">
      <header className={isLong(name) ? "sheet-head sheet-long" : "sheet-head"}>
        <h2 dir="auto">{name === "" ? "Unnamed instrument" : name}</h2>
        <p>
          Profile sheet, <time>{new Date().toLocaleDateString("en", { dateStyle: "long" })}</time>
        </p>
      </header>
      <div className="sheet-top">
        <section className="sheet-shim" aria-label={part.name}>
          <h3>{part.heading}</h3>
          <ShimFigures shim={part.value} units={units} />
          <p className="sheet-contact">
            {profile.seat === null
              ? `edge ${dimension(contactOf(instrument), units)} from the tail end`
              : `${dimension(profile.saddleX, units)} from the tail end`}
          </p>
        </section>
        <SheetNumbers plan={plan} units={units} />
      </div>
      <SheetGiven instrument={instrument} units={units} />
      {drawings !== null && <SceneFigure scene={drawings.section} />}
      <div className="sheet-plan">
        {drawings !== null && <SceneFigure scene={drawings.plan} />}
        <div className="sheet-aside">
          <SheetMarks plan={plan} units={units} />
          <SheetWork plan={plan} units={units} />
        </div>
      </div>
      <p className="sheet-caution">
        Wood dust causes cancer: extraction and a fitted mask. Keep hands and sleeves from edges
        under power. Stand aside of clamps and strings under load. Your own country’s rules come
        first.
      </p>
      <footer className="sheet-foot">
        <div>
          <SheetBlanks profile={profile} units={units} />
          <CheckBar />
        </div>
        <AddressCode instrument={instrument} />
      </footer>
    </article>
  );
}

function drawingsOf({ instrument, profile }: ShownPlan, units: Units, paper: Paper) {
  const set = givensOf(instrument);
  if (!set.ok) return null;
  const words = measureFormat(units);
  const room = heights[paper];
  const wanted = planHeight(set.givens, profile, planWidth);
  const height = Math.min(wanted, room.plan);
  return {
    section: sectionOf(set.givens, profile, {
      width: typeWidth,
      height: room.section - (isLong(instrument.name) ? room.name : 0),
      stretch: 5,
      turned: false,
      words,
    }).scene,
    plan: rimPlan(set.givens, profile, { width: planWidth, height, words }),
  };
}
