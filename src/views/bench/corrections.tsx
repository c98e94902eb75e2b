import { type ReactNode, useState } from "react";
import type { Change } from "../../instrument/as-built/as-built.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import {
  type CorrectionExtent,
  correctionOf,
  leftSaid,
  takeBackCorrection,
  takeCorrection,
} from "../../profile/bench/correction.ts";
import type { Outlook } from "../../profile/bench/outlook.ts";
import type { Remedy, RemedyId, RemedyResult } from "../../profile/bench/remedy.ts";
import { replaceRecord } from "../../store/document/as-built-edits.ts";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { addStyles } from "../late-styles.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { BeforeAfterFigure } from "./before-after-figure.tsx";
import { today } from "./bench-context.ts";
import styles from "./corrections.css?inline";
import { SeveralRemedies } from "./several-remedies.tsx";
import { type Looked, useOutlook, type Workpiece } from "./use-outlook.ts";

addStyles(styles);

interface RemedyCardProps {
  readonly result: RemedyResult;
  /** Its drawing, where it is the one drawn. */
  readonly figure: ReactNode;
  readonly onDraw: (id: RemedyId | null) => void;
  readonly onTake: (remedy: Remedy) => void;
}

/** One remedy: what to do, what else it changes; or why it is not to be had. */
function RemedyCard({ result, figure, onDraw, onTake }: RemedyCardProps) {
  const units = useRimwright((state) => state.choices.units);
  if (!result.ok)
    return (
      <li className="remedy remedy-barred">
        <h4>{result.name}</h4>
        <p>Not possible: {sayPhrase(result.bar, units)}</p>
      </li>
    );
  const { remedy } = result;
  const drawn = figure !== null;
  return (
    <li className={drawn ? "remedy remedy-drawn" : "remedy"}>
      <h4>{remedy.name}</h4>
      <p className="remedy-act">{sayPhrase(remedy.instruction, units)}</p>
      <ul className="remedy-also">
        {remedy.also.map((phrase) => {
          const said = sayPhrase(phrase, units);
          return <li key={said}>{said}</li>;
        })}
      </ul>
      {figure}
      <div className="remedy-acts">
        <button
          type="button"
          aria-pressed={drawn}
          aria-label={`Show before and after: ${remedy.name}`}
          onClick={() => onDraw(drawn ? null : remedy.id)}
        >
          Show
        </button>
        <button type="button" aria-label={`Apply: ${remedy.name}`} onClick={() => onTake(remedy)}>
          Apply
        </button>
      </div>
    </li>
  );
}

/** What can still be done about the difference between plan and outlook, each remedy with its exact amount. */
export function Corrections(piece: Workpiece) {
  const looked = useOutlook(piece);
  if (!looked.result.ok)
    return (
      <section className="corrections" aria-label="Corrections">
        <h2>Corrections</h2>
        <p>Put the measurement named above right first: until then nothing can be worked out.</p>
        <TakenList looked={looked} />
      </section>
    );
  return <Remedies looked={looked} outlook={looked.result.outlook} />;
}

interface RemediesProps {
  readonly looked: Looked;
  readonly outlook: Outlook;
}

type Extent = CorrectionExtent | "accept";

const extents = [
  ["accept", "accept it as it is"],
  ["window", "just into the window"],
  ["plan", "as planned"],
] as const;

const together = "Several remedies together";

function Remedies({ looked, outlook }: RemediesProps) {
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const { record, goal } = looked;
  const [chosen, setChosen] = useState<RemedyId | "together" | null>(null);
  const [extent, setExtent] = useState<Extent>("plan");
  const correction = correctionOf(outlook, record, goal, extent === "accept" ? "plan" : extent);
  const figureOf = (name: string, changes: readonly Change[]) => (
    <BeforeAfterFigure name={name} before={outlook} changes={changes} />
  );
  const take = (name: string, changes: readonly Change[]): void => {
    setChosen(null);
    edit((state) => replaceRecord(state, takeCorrection(record, outlook, name, changes, today())));
  };
  return (
    <section className="corrections" aria-label="Corrections">
      <h2>Corrections</h2>
      <p className="corrections-left">{sayPhrase(leftSaid(correction), units)}</p>
      <ChoiceButtons
        legend="How far to correct it"
        options={extents}
        value={extent}
        onChoose={setExtent}
      />
      {extent !== "accept" && correction.remedies.length > 0 && (
        <>
          <h3>Each alone does all of it</h3>
          <ul className="remedies">
            {correction.remedies.map((one) => (
              <RemedyCard
                key={one.ok ? one.remedy.id : one.id}
                result={one}
                figure={
                  one.ok && one.remedy.id === chosen
                    ? figureOf(one.remedy.name, one.remedy.changes)
                    : null
                }
                onDraw={setChosen}
                onTake={(remedy) => take(remedy.name, remedy.changes)}
              />
            ))}
          </ul>
          <SeveralRemedies
            record={record}
            outlook={outlook}
            goal={goal}
            extent={extent}
            drawn={chosen === "together"}
            onDraw={() => setChosen(chosen === "together" ? null : "together")}
            onTake={(changes) => take(together, changes)}
          />
        </>
      )}
      <TakenList looked={looked} />
    </section>
  );
}

function TakenList({ looked }: { readonly looked: Looked }) {
  const edit = useEdit();
  const { taken } = looked.record;
  if (taken.length === 0) return null;
  return (
    <section className="taken" aria-label="Corrections applied">
      <h3>Applied so far</h3>
      <ol>
        {taken.map(({ remedy, date }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: corrections are only added and taken off at the end.
          <li key={i}>
            {date}: {remedy}
          </li>
        ))}
      </ol>
      <p>They are in the plan now: the figures expected from here on are after them.</p>
      <button
        type="button"
        onClick={() => edit((state) => replaceRecord(state, takeBackCorrection(looked.record)))}
      >
        Undo the last correction
      </button>
    </section>
  );
}
