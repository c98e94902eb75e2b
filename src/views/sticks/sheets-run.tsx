import { useEffect, useMemo, useState } from "react";
import type { Instrument } from "../../instrument/instrument.ts";
import { profileOf } from "../../profile/profile.ts";
import { nameOf } from "../find-names.ts";
import { lastPaper, printOn } from "../profile-sheet/paper.ts";
import { ProfileSheet } from "../profile-sheet/profile-sheet.tsx";
import { useRimwright } from "../store-context.ts";

/** Most sheets of one run: each is a page with two drawings. */
const most = 100;

interface Props {
  readonly instruments: readonly Instrument[];
  readonly onBack: () => void;
}

/** The profile sheets of several instruments, to be printed in one run; each by its own plan. */
export function SheetsRun({ instruments, onBack }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const [paper] = useState(lastPaper);
  useEffect(() => printOn(paper), [paper]);
  const plans = useMemo(
    () =>
      instruments.slice(0, most).map((instrument) => {
        const result = profileOf(instrument);
        return { instrument, profile: result.ok ? result.profile : null };
      }),
    [instruments],
  );
  const without = plans.filter(({ profile }) => profile === null);
  return (
    <section className="sheets-run" aria-label="Sheets">
      <div className="stick-line sheets-run-tools">
        <button type="button" onClick={onBack}>
          Back to the table
        </button>
        <button type="button" className="sheet-print" onClick={() => window.print()}>
          Print {plans.length - without.length} sheets
        </button>
        <p>
          Print on {paper} at full size: 100 %, no margins. The paper is chosen in the Sheet view.
          {instruments.length > most && ` The first ${most} of ${instruments.length} are here.`}
          {without.length > 0 &&
            ` Without a plan, so without a sheet: ${without.map(({ instrument }) => nameOf(instrument.name)).join(", ")}.`}
        </p>
      </div>
      {plans.map(
        ({ instrument, profile }) =>
          profile !== null && (
            <ProfileSheet
              key={instrument.id}
              plan={{ instrument, profile, refusal: null }}
              units={units}
              paper={paper}
            />
          ),
      )}
    </section>
  );
}
