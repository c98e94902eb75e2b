import { useEffect, useState } from "react";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import { keepPaper, type Paper, papers, printOn, recalledPaper } from "./paper.ts";
import { ProfileSheet } from "./profile-sheet.tsx";
import "./sheet.css";

/** The one page to take to the bench, as it will print. */
export function SheetView() {
  const plan = usePlan();
  const units = useRimwright((state) => state.choices.units);
  const [paper, setPaper] = useState(recalledPaper);
  useEffect(() => printOn(paper), [paper]);
  const choose = (chosen: Paper): void => {
    keepPaper(chosen);
    setPaper(chosen);
  };
  if (plan === null) return null;
  return (
    <main className="sheet-view">
      <div className="sheet-tools">
        <PaperSwitch paper={paper} onChoose={choose} />
        <button type="button" className="sheet-print" onClick={() => window.print()}>
          Print
        </button>
        <p>Print at full size: 100 %, no “fit to page”. Then measure the bar at the foot.</p>
      </div>
      {plan.refusal !== null && (
        <p className="sheet-stale" role="status">
          What the fields say now has no plan. This is the last plan that worked; Layout says why.
        </p>
      )}
      <div className="sheet-desk">
        <ProfileSheet plan={plan} units={units} paper={paper} />
      </div>
    </main>
  );
}

function PaperSwitch({ paper, onChoose }: { paper: Paper; onChoose: (paper: Paper) => void }) {
  return (
    <fieldset className="switch">
      <legend>Paper</legend>
      {papers.map((one) => (
        <button key={one} type="button" aria-pressed={one === paper} onClick={() => onChoose(one)}>
          {one}
        </button>
      ))}
    </fieldset>
  );
}
