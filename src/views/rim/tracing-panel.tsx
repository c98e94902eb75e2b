import { useMemo, useState } from "react";
import { tracingPlanOf } from "../../drawing/plan/tracing-plan.ts";
import { TracedOutline } from "../../geometry/outline/traced-outline.ts";
import type { TracingEnds } from "../../geometry/outline/tracing.ts";
import { guessedEnds, turned } from "../../geometry/outline/tracing-ends.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import type { TracingFile } from "../../instrument/tracing-file.ts";
import { traceOutline } from "../../store/document/edits.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { useJob } from "../use-job.ts";
import { RimFigure } from "./rim-figure.tsx";
import {
  EndsEntry,
  TracingChoices,
  TracingText,
  type TracingUnit,
  unitSize,
} from "./tracing-choices.tsx";
import { type TracingTrial, tryTracing } from "./tracing-trial.ts";

/** The builder's own outline, in place of the curves through the stated widths. */
export function TracingPanel() {
  const tracing = useRimwright((state) => state.instrument.body.tracing);
  const [text, setText] = useState("");
  return (
    <section aria-labelledby="rim-tracing">
      <h2 id="rim-tracing">Your own outline</h2>
      {tracing === undefined ? (
        <p>
          The outline is drawn through the stated widths. Trace your own mould instead: a list of x
          and y, or an SVG drawing, of one half from tail to neck end or of the whole.
        </p>
      ) : (
        <InUse places={tracing.length} />
      )}
      <TracingText text={text} onText={setText} />
      {text.trim() !== "" && <Drawing key={text} text={text} />}
    </section>
  );
}

/** A text read in the worker, for a stranger's drawing may be long. */
function Drawing({ text }: { readonly text: string }) {
  const units = useRimwright((state) => state.choices.units);
  const job = useMemo(() => ({ kind: "tracing", text }) as const, [text]);
  const { state, progress, stop, again } = useJob<"tracing">(job);
  const read = progress?.answer ?? null;
  if (read?.ok === true) return <Trial drawing={read.drawing} />;
  if (read !== null)
    return (
      <p role="alert" className="rim-warn">
        {sayPhrase(read.why, units)}
      </p>
    );
  return state === "stopped" || state === "failed" ? (
    <p role="status">
      {state === "failed" ? "The drawing could not be read." : "Stopped."}{" "}
      <button type="button" onClick={again}>
        Read it again
      </button>
    </p>
  ) : (
    <p role="status">
      Reading the drawing <progress value={progress?.share ?? 0} aria-label="Read so far" />{" "}
      <button type="button" onClick={stop}>
        Stop
      </button>
    </p>
  );
}

function InUse({ places }: { readonly places: number }) {
  const edit = useEdit();
  return (
    <p>
      This instrument follows a traced outline of {places} places; its stated widths and places of
      bouts and waist shape nothing.{" "}
      <button type="button" onClick={() => edit((state) => traceOutline(state, null))}>
        Take the tracing off
      </button>
    </p>
  );
}

/** A drawing being placed and fitted, before it is used. */
function Trial({ drawing }: { readonly drawing: TracingFile }) {
  const units = useRimwright((state) => state.choices.units);
  const [unit, setUnit] = useState<TracingUnit>(drawing.unit === null ? "mm" : "file");
  const [error, setError] = useState(0.25);
  const [ends, setEnds] = useState<TracingEnds | null>(null);
  // Counts the ends set otherwise than by typing: what was typed for them then no longer stands.
  const [round, setRound] = useState(0);
  const resetEnds = (next: TracingEnds | null): void => {
    setEnds(next);
    setRound(round + 1);
  };
  const scale = unitSize(unit, drawing.unit);
  const places = useMemo(
    () => drawing.places.map(([x, y]) => [x * scale, y * scale] as const),
    [drawing, scale],
  );
  const guess = useMemo(() => guessedEnds(places), [places]);
  const trial = useMemo(
    () => tryTracing(places, ends ?? guess, error),
    [places, ends, guess, error],
  );
  const words = measureFormat(units);
  if (trial === null || guess === null)
    return <p className="rim-warn">There are too few places here to make an outline.</p>;
  const { result, drawn, length } = trial;
  const outline = result.ok ? new TracedOutline(result.tracing) : null;
  return (
    <>
      <TracingChoices
        {...{ unit, error, stated: drawing.unit !== null, onError: setError }}
        onUnit={(next) => {
          setUnit(next);
          resetEnds(null);
        }}
      />
      <EndsEntry
        round={round}
        ends={ends ?? guess}
        onEnds={setEnds}
        onTurn={() => resetEnds(turned(ends ?? guess))}
      />
      <RimFigure
        first={{ width: 760, height: 420 }}
        draw={(width) =>
          tracingPlanOf(drawn, length, outline, {
            width,
            height: Math.min(520, width * 0.8),
            words,
          })
        }
      />
      <Verdict trial={trial} lines={drawing.lines} />
    </>
  );
}

function Verdict({
  trial: { length, result },
  lines,
}: {
  readonly trial: TracingTrial;
  readonly lines: number;
}) {
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const words = measureFormat(units);
  if (!result.ok)
    return (
      <p role="status" className="rim-warn">
        {sayPhrase(result.why, units)}
      </p>
    );
  const { tracing, error, apart } = result;
  return (
    <>
      <p role="status">
        A smooth curve through {tracing.length} places, {words.length(length)} long, within{" "}
        {words.length(error)} of{" "}
        {apart > 0.005
          ? `the middle between the two halves drawn, which lie up to ${words.length(apart)} apart.`
          : "everything drawn."}
        {lines > 1 && ` The drawing holds ${lines} lines; the longest is taken.`}
      </p>
      <button type="button" onClick={() => edit((state) => traceOutline(state, tracing))}>
        Use this outline
      </button>
    </>
  );
}
