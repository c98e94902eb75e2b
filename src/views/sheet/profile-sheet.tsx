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
const sectionHeight = 196;
const planWidth = 452;

export function ProfileSheet({ plan, units, paper }: Props) {
  const { instrument, profile } = plan;
  const drawings = useMemo(() => drawingsOf(plan, units), [plan, units]);
  return (
    <article className={`sheet sheet-${paper.toLowerCase()}`} aria-label="Profile sheet">
      <header className="sheet-head">
        <h2>{instrument.name === "" ? "Unnamed instrument" : instrument.name}</h2>
        <p>
          Profile sheet, <time>{new Date().toLocaleDateString()}</time>
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
            edge {dimension(instrument.shim.contact, units)} in from the tail end
          </p>
        </section>
        <SheetNumbers plan={plan} units={units} />
      </div>
      {drawings !== null && (
        <>
          <SceneFigure scene={drawings.section} />
          <div className="sheet-plan">
            <SceneFigure scene={drawings.plan} />
            <SheetMarks plan={plan} units={units} />
          </div>
        </>
      )}
      <SheetWork plan={plan} units={units} />
      <SheetBlanks profile={profile} units={units} />
      <footer className="sheet-foot">
        <CheckBar />
        <AddressCode instrument={instrument} />
      </footer>
    </article>
  );
}

function drawingsOf({ instrument, profile }: ShownPlan, units: Units) {
  const set = settingOf(instrument);
  if (!set.ok) return null;
  const words = {
    length: (mm: number) => dimension(mm, units),
    figure: (mm: number) => dimension(mm, units).replace(/ ?(mm|in)$/, ""),
    angle,
    unit: units === "mm" ? "mm" : "inch",
  } as const;
  const height = planHeight(set.setting, profile, planWidth);
  return {
    section: sectionOf(set.setting, profile, {
      width: typeWidth,
      height: sectionHeight,
      stretch: 5,
      turned: false,
      words,
    }).scene,
    plan: planOf(set.setting, profile, { width: planWidth, height, words }),
  };
}
