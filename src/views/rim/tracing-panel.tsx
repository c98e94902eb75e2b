import { useMemo, useState } from "react";
import { tracingPlanOf } from "../../drawing/plan/tracing-plan.ts";
import type { TracingEnds } from "../../geometry/outline/tracing.ts";
import { guessedEnds, turned } from "../../geometry/outline/tracing-ends.ts";
import type { Tracing } from "../../instrument/instrument.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import type { TracingFile } from "../../instrument/tracing-file.ts";
import { type TracedHalves, traceOutline } from "../../store/document/outline-edits.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { useJob } from "../use-job.ts";
import { RimFigure } from "./rim-figure.tsx";
import {
  EndsEntry,
  HalvesChoices,
  TracingChoices,
  TracingText,
  type TracingUnit,
  unitSize,
} from "./tracing-choices.tsx";
import { TracingInUse } from "./tracing-in-use.tsx";
import {
  type HalvesUse,
  halvesBy,
  outlinesOf,
  type TracingTrial,
  tryTracing,
  usesOf,
} from "./tracing-trial.ts";

/** The builder's own outline, in place of the curves through the stated widths. */
export function TracingPanel() {
  const { tracing, tracingTreble } = useRimwright((state) => state.instrument.body);
  const [text, setText] = useState("");
  return (
    <section aria-labelledby="rim-tracing">
      <h2 id="rim-tracing">Your own outline</h2>
      {(tracing ?? tracingTreble) === undefined ? (
        <p>
          The outline is drawn through the stated widths. Trace your own mould instead: a list of x
          and y, or an SVG drawing, of one half from tail to neck end or of the whole, with a
          cutaway or without.
        </p>
      ) : (
        <TracingInUse bass={tracing ?? null} treble={tracingTreble ?? null} />
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

/** A drawing being placed and fitted, before it is used. */
function Trial({ drawing }: { readonly drawing: TracingFile }) {
  const units = useRimwright((state) => state.choices.units);
  const [unit, setUnit] = useState<TracingUnit>(drawing.unit === null ? "mm" : "file");
  const [error, setError] = useState(0.25);
  const [ends, setEnds] = useState<TracingEnds | null>(null);
  const [over, setOver] = useState(drawing.down);
  const [chosen, setChosen] = useState<HalvesUse | null>(null);
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
    () => tryTracing(places, { ends: ends ?? guess, over, error }),
    [places, ends, guess, over, error],
  );
  const words = measureFormat(units);
  const body = useRimwright((state) => state.instrument.body);
  const now = { bass: body.tracing ?? null, treble: body.tracingTreble ?? null };
  if (trial === null || guess === null)
    return <p className="rim-warn">There are too few places here to make an outline.</p>;
  const { result, drawn, length } = trial;
  const uses = usesOf(result, error, now);
  const use = chosen !== null && uses.includes(chosen) ? chosen : (uses[0] ?? null);
  const halves = result.ok && use !== null ? halvesBy(use, result, now) : null;
  const fit = halves === null ? null : outlinesOf(halves, body);
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
      {use !== null && (
        <HalvesChoices
          {...{ uses, use, over: over !== drawing.down }}
          onUse={setChosen}
          onOver={(other) => setOver(other !== drawing.down)}
        />
      )}
      <RimFigure
        first={{ width: 760, height: 420 }}
        draw={(width) =>
          tracingPlanOf(drawn, length, fit, {
            width,
            height: Math.min(520, width * 0.8),
            words,
          })
        }
      />
      <Verdict trial={trial} halves={halves} lines={drawing.lines} />
    </>
  );
}

/** How many places each half has that is made of the drawing. */
function placesSaid({ bass, treble }: TracedHalves, drawn: Tracing | null): string {
  if (treble === null) return String(bass?.length);
  return bass === drawn ? `${bass?.length} and ${treble.length}` : String(drawn?.length);
}

interface VerdictProps {
  readonly trial: TracingTrial;
  /** What would be made of it; null where the two halves are not as long as one another. */
  readonly halves: TracedHalves | null;
  readonly lines: number;
}

function Verdict({ trial: { length, result }, halves, lines }: VerdictProps) {
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const words = measureFormat(units);
  if (!result.ok)
    return (
      <p role="status" className="rim-warn">
        {sayPhrase(result.why, units)}
      </p>
    );
  const { bass, treble, error, apart } = result;
  if (halves === null)
    return (
      <p role="status" className="rim-warn">
        This half is {words.length(length)} long and the other is not: both must be. Put its tail
        and neck end as far apart as the other's.
      </p>
    );
  return (
    <>
      <p role="status">
        A smooth curve through {placesSaid(halves, bass ?? treble)} places, {words.length(length)}{" "}
        long, within {words.length(error)} of everything drawn.
        {apart > 0.005 && ` The two halves lie up to ${words.length(apart)} apart.`}
        {lines > 1 && ` The drawing holds ${lines} lines; the longest is taken.`}
      </p>
      <button type="button" onClick={() => edit((state) => traceOutline(state, halves))}>
        Use this outline
      </button>
    </>
  );
}
