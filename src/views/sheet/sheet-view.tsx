import { useEffect, useState } from "react";
import type { DomeMethod } from "../../instrument/dome-fields.ts";
import { Select } from "../fields/select.tsx";
import { latePart } from "../late-part.tsx";
import { addStyles } from "../late-styles.ts";
import { lastPaper, type Paper, papers, printOn, savePaper } from "../profile-sheet/paper.ts";
import { ProfileSheet } from "../profile-sheet/profile-sheet.tsx";
import { PublishedAddress } from "../published-address.tsx";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import styles from "./sheet.css?inline";
import { type TemplateName, templateLabel, templatesOf } from "./template-names.ts";

addStyles(styles);

const TemplatePages = latePart({
  what: "The part that draws templates",
  load: () => import("./template-pages.tsx").then(({ TemplatePages }) => TemplatePages),
});

const profileSheet = "Profile sheet";

type Page = typeof profileSheet | TemplateName;

const pagesOf = (method: DomeMethod, uneven: boolean) =>
  [
    [profileSheet, profileSheet],
    {
      heading: "Full-size templates",
      options: templatesOf(uneven).map(
        (name) => [name, templateLabel(name, method, uneven)] as const,
      ),
    },
  ] as const;

/** What is taken to the bench on paper, as it will print: the one-page sheet, or a template at full size. */
export function SheetView() {
  const plan = usePlan();
  const units = useRimwright((state) => state.choices.units);
  const [paper, setPaper] = useState(lastPaper);
  const [page, setPage] = useState<Page>(profileSheet);
  useEffect(() => printOn(paper), [paper]);
  const choose = (chosen: Paper): void => {
    savePaper(chosen);
    setPaper(chosen);
  };
  if (plan === null) return null;
  const uneven = plan.profile.trebleStations !== null;
  const names = templatesOf(uneven);
  // A template that the instrument opened since has not.
  const shown: Page = page === profileSheet || names.includes(page) ? page : profileSheet;
  return (
    <main className="sheet-view">
      <div className="sheet-tools">
        <Select
          label="Page or template"
          value={shown}
          options={pagesOf(plan.instrument.dome.method, uneven)}
          onChoose={setPage}
        />
        <PaperSwitch paper={paper} onChoose={choose} />
        <button type="button" className="sheet-print" onClick={() => window.print()}>
          Print
        </button>
        <p>
          Print on {paper} at full size: 100 %, no margins, no “fit to page”. Then measure the bar
          at the foot.
        </p>
        <PublishedAddress />
      </div>
      {plan.refusal !== null && (
        <p className="sheet-stale" role="status">
          What the fields say now has no plan. This is the last plan that worked; Layout says why.
        </p>
      )}
      {shown === profileSheet ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: on a small screen it scrolls, which must be done by keyboard too.
        <section className="sheet-desk" tabIndex={0} aria-label="The sheet as it prints">
          <ProfileSheet plan={plan} units={units} paper={paper} />
        </section>
      ) : (
        <TemplatePages key={shown} name={shown} plan={plan} units={units} paper={paper} />
      )}
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
