import { useEffect, useRef } from "react";
import { noteLimit } from "../../instrument/as-built/as-built.ts";
import { measurementsAt } from "../../instrument/as-built/measurement-fields.ts";
import { type StepId, stepNameOf, stepsOf } from "../../instrument/as-built/steps.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { type Phrase, sayPhrase } from "../../instrument/phrase.ts";
import { tailExtraOffer } from "../../profile/bench/tail-extra.ts";
import type { WorkStep } from "../../profile/bench/work-step.ts";
import { markStep, noteStep } from "../../store/document/as-built-edits.ts";
import { setField } from "../../store/document/edits.ts";
import { SaddleFigure } from "../figures/saddle-figure.tsx";
import { useEdit, useRimwright } from "../store-context.ts";
import { today, useRecord } from "./bench-context.ts";
import { MeasurementRow } from "./measurement-row.tsx";
import { StepPicture } from "./step-picture.tsx";
import { useOutlook, type Workpiece } from "./use-outlook.ts";

/** What the side depths say that the dish took off the tail, offered to the plan in place of what it counts on. */
function TailExtraOffer({ instrument }: { readonly instrument: Instrument }) {
  const units = useRimwright((state) => state.choices.units);
  const record = useRecord();
  const edit = useEdit();
  const offer = tailExtraOffer(instrument, record);
  if (offer === null) return null;
  return (
    <div className="offer" role="status">
      <p>{sayPhrase(offer.said, units)}</p>
      <button
        type="button"
        onClick={() => edit((state) => setField(state, "dome.tailExtra", offer.tailExtra))}
      >
        Count it into the plan
      </button>
    </div>
  );
}

interface Props extends Workpiece {
  readonly work: WorkStep;
  /** The plan with the corrections taken, as `work` has it. */
  readonly corrected: Workpiece;
  /** Come from another step, so that its name takes the focus and is read out. */
  readonly arrived: boolean;
  readonly onGoTo: (step: StepId) => void;
}

/** One step, to be read from the bench and touched with a glove on. */
export function StepCard({ instrument, profile, work, corrected, arrived, onGoTo }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const record = useRecord();
  const edit = useEdit();
  const { id, caution } = work;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (arrived) heading.current?.focus();
  }, [arrived]);
  const { method } = instrument.dome;
  const steps = stepsOf(method);
  const at = steps.indexOf(id);
  // Nothing follows from how far an overrun runs: it is shown where it was written down, and no more asked for.
  const asked = measurementsAt(id, method).filter(
    (key) => key !== "overrun" || record.readings.overrun !== undefined,
  );
  const done = record.done[id];
  const say = (phrase: Phrase): string => sayPhrase(phrase, units);
  const mark = (date: string | null): void => edit((state) => markStep(state, id, date));
  return (
    <article className="step-card" aria-labelledby="step-name">
      <p className="step-count">
        Step {at + 1} of {steps.length}
        {done !== undefined && `, done on ${done}`}
      </p>
      <h2 id="step-name" ref={heading} tabIndex={-1}>
        {stepNameOf(id, method)}
      </h2>
      {work.instructions.map((phrase) => (
        <p key={say(phrase)} className="step-act">
          {say(phrase)}
        </p>
      ))}
      <StepPicture step={id} {...corrected} />
      {id === "saddle" && <SaddleToFile {...corrected} />}
      <section aria-label="Measure">
        <h3>Measure</h3>
        <p>{say(work.measure)}</p>
        {asked.map((key) => (
          <MeasurementRow key={key} instrument={instrument} profile={profile} measurement={key} />
        ))}
        {id === "dish" && <TailExtraOffer instrument={instrument} />}
      </section>
      <section className="step-mistake" aria-label="Usual mistake">
        <h3>The usual mistake</h3>
        <p>{say(work.mistake)}</p>
        <p>
          <strong>How you’ll see it:</strong> {say(work.sign)}
        </p>
      </section>
      {caution !== null && (
        <section className="step-caution" aria-label="Caution">
          <h3>Caution</h3>
          <p>{say(caution)}</p>
        </section>
      )}
      <label className="step-note">
        Note to this step
        <textarea
          rows={2}
          maxLength={noteLimit}
          value={record.notes[id] ?? ""}
          onChange={({ target }) => edit((state) => noteStep(state, id, target.value))}
        />
      </label>
      <StepBar steps={steps} at={at} done={done !== undefined} onMark={mark} onGoTo={onGoTo} />
    </article>
  );
}

/** The saddle of what is made so far, across the strings. */
function SaddleToFile(piece: Workpiece) {
  const { result } = useOutlook(piece);
  if (!result.ok) return null;
  const { givens, dome, heights } = result.outlook;
  const profile = {
    dome: dome ?? piece.profile.dome,
    bridgeClearance: heights.bridgeClearance,
  };
  return <SaddleFigure givens={givens} profile={profile} />;
}

interface BarProps {
  readonly steps: readonly StepId[];
  readonly at: number;
  readonly done: boolean;
  readonly onMark: (date: string | null) => void;
  readonly onGoTo: (step: StepId) => void;
}

function StepBar({ steps, at, done, onMark, onGoTo }: BarProps) {
  const [before, after] = [steps[at - 1], steps[at + 1]];
  const finishStep = (): void => {
    onMark(today());
    if (after !== undefined) onGoTo(after);
  };
  return (
    <div className="step-bar">
      <button
        type="button"
        disabled={before === undefined}
        onClick={() => before !== undefined && onGoTo(before)}
      >
        Back
      </button>
      {done ? (
        <button type="button" onClick={() => onMark(null)}>
          Reopen this step
        </button>
      ) : (
        <button type="button" className="step-finish" onClick={finishStep}>
          Done
        </button>
      )}
      <button
        type="button"
        disabled={after === undefined}
        onClick={() => after !== undefined && onGoTo(after)}
      >
        Next
      </button>
    </div>
  );
}
