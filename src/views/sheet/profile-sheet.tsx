import { useMemo } from "react";
import { planOf } from "../../drawing/plan.ts";
import { planHeight } from "../../drawing/plan-sheet.ts";
import { sectionOf } from "../../drawing/section.ts";
import { lengthFigure, nearest64, type Units } from "../../instrument/length.ts";
import { settingOf } from "../../profile/setting.ts";
import type { ShownPlan } from "../../store/plan.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { angle, dimension } from "../measures.ts";
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
const heights: Readonly<Record<Paper, { readonly section: number; readonly plan: number }>> = {
  A4: { section: 230, plan: 446 },
  Letter: { section: 200, plan: 430 },
};

/** A name longer than this is set smaller, so that the page keeps its one page. */
const longName = 48;

export function ProfileSheet({ plan, units, paper }: Props) {
  const { instrument, profile } = plan;
  const drawings = useMemo(() => drawingsOf(plan, units, paper), [plan, units, paper]);
  const { name } = instrument;
  return (
    <article className={`sheet sheet-${paper.toLowerCase()}`} aria-label="Profile sheet">
      <header className={name.length > longName ? "sheet-head sheet-long" : "sheet-head"}>
        <h2>{name === "" ? "Unnamed instrument" : name}</h2>
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
  const words = {
    length: (mm: number) => dimension(mm, units),
    figure: (mm: number) => dimension(mm, units).replace(/ ?(mm|in)$/, ""),
    angle,
    unit: units === "mm" ? "mm" : "inch",
  } as const;
  const wanted = planHeight(set.setting, profile, planWidth);
  const height = Math.min(wanted, heights[paper].plan);
  return {
    section: sectionOf(set.setting, profile, {
      width: typeWidth,
      height: heights[paper].section,
      stretch: 5,
      turned: false,
      words,
    }).scene,
    plan: planOf(set.setting, profile, { width: planWidth, height, words }),
  };
}
