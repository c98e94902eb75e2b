import { useMemo } from "react";
import { textWidth } from "../../drawing/lettering.ts";
import { planOf } from "../../drawing/plan.ts";
import { planHeight } from "../../drawing/plan-sheet.ts";
import { sectionOf } from "../../drawing/section.ts";
import { lengthFigure, nearest64, type Units } from "../../instrument/length.ts";
import { settingOf } from "../../profile/setting.ts";
import type { ShownPlan } from "../../store/plan.ts";
import { wordsIn } from "../figures/plan-words.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { dimension } from "../measures.ts";
import { AddressCode } from "./address-code.tsx";
import { CheckBar } from "./check-bar.tsx";
import type { Paper } from "./paper.ts";
import { SheetBlanks } from "./sheet-blanks.tsx";
import { SheetMarks } from "./sheet-marks.tsx";
import { SheetNumbers } from "./sheet-numbers.tsx";
import { SheetWork } from "./sheet-work.tsx";

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
  A4: { section: 262, plan: 446, name: 34 },
  Letter: { section: 232, plan: 430, name: 40 },
} as const;

/** px of a line that the date leaves the name, and the size it is set in there. A wider name is set smaller, in lines of its own, so that the sheet keeps its one page. */
const nameRoom = 470;
const nameSize = 19;

const isLong = (name: string): boolean => textWidth(name, nameSize, true) > nameRoom;

export function ProfileSheet({ plan, units, paper }: Props) {
  const { instrument, profile } = plan;
  const drawings = useMemo(() => drawingsOf(plan, units, paper), [plan, units, paper]);
  const { name } = instrument;
  return (
    <article className={`sheet sheet-${paper.toLowerCase()}`} aria-label="Profile sheet">
      <header className={isLong(name) ? "sheet-head sheet-long" : "sheet-head"}>
        <h2 dir="auto">{name === "" ? "Unnamed instrument" : name}</h2>
        <p>
          Profile sheet, <time>{new Date().toLocaleDateString("en", { dateStyle: "long" })}</time>
        </p>
      </header>
      <div className="sheet-top">
        <section className="sheet-shim" aria-label="Shim">
          <h3>Shim under the tail</h3>
          <p>
            <strong>{lengthFigure(profile.shim, { unit: "mm", decimals: 1, fixed: true })}</strong>{" "}
            mm
          </p>
          <p>
            <strong>{nearest64(profile.shim).replace(" in", "")}</strong> in
          </p>
          <p className="sheet-contact">
            edge {dimension(instrument.shim.contact, units)} from the tail end
          </p>
        </section>
        <SheetNumbers plan={plan} units={units} />
      </div>
      {drawings !== null && <SceneFigure scene={drawings.section} />}
      <div className="sheet-plan">
        {drawings !== null && <SceneFigure scene={drawings.plan} />}
        <div className="sheet-aside">
          <SheetMarks plan={plan} units={units} />
          <SheetWork plan={plan} units={units} />
        </div>
      </div>
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
  const set = settingOf(instrument);
  if (!set.ok) return null;
  const words = wordsIn(units);
  const room = heights[paper];
  const wanted = planHeight(set.setting, profile, planWidth);
  const height = Math.min(wanted, room.plan);
  return {
    section: sectionOf(set.setting, profile, {
      width: typeWidth,
      height: room.section - (isLong(instrument.name) ? room.name : 0),
      stretch: 5,
      turned: false,
      words,
    }).scene,
    plan: planOf(set.setting, profile, { width: planWidth, height, words }),
  };
}
