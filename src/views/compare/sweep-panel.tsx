import { useMemo, useState } from "react";
import { compareLine } from "../../drawing/charts/overlay.ts";
import {
  type SweepChartOptions,
  type SweptCurve,
  sweepChart,
} from "../../drawing/charts/sweep-chart.ts";
import type { DomeMethod } from "../../instrument/dome-fields.ts";
import { readField } from "../../instrument/field-value.ts";
import type { Range, TargetKind } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import {
  type Crossing,
  hasInput,
  heldInstrument,
  type Sweep,
  type SweepAsked,
  sweepOf,
} from "../../profile/comparison/sweep.ts";
import type { Comparison } from "../../store/document/comparison.ts";
import { plot } from "../../store/document/variant-edits.ts";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { FieldChoice } from "../fields/field-choice.tsx";
import { SaveSvg, SceneRoom } from "../figures/chart-figure.tsx";
import { fieldMeasure, outcomeMeasure } from "../figures/chart-measures.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { rangeRound, zooms } from "./input-range.ts";
import { OutcomeChoice } from "./outcome-choice.tsx";
import { SweepHandle } from "./sweep-handle.tsx";
import { type Compared, useCompared, useComparison } from "./use-comparison.ts";

interface Props {
  readonly curves: readonly SweptCurve[];
  readonly asked: SweepAsked;
  readonly kind: TargetKind;
}

/** In words, where each curve comes into its window and leaves it. */
function Crossings({ curves, asked, kind }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const { say } = fieldMeasure(asked.path, kind, units);
  return (
    <ul className="crossings" aria-label="Where each meets its window">
      {curves.map(({ name, sweep }) => (
        <li key={name}>
          <strong>{name}</strong> {told(sweep, say)}
        </li>
      ))}
    </ul>
  );
}

function told({ window, crossings, points }: Sweep, say: (x: number) => string): string {
  if (window === null) return "has no window for this outcome.";
  if (crossings.length === 0) {
    const value = points.find((point) => point.value !== null)?.value ?? null;
    if (value === null) return "has no plan here.";
    return value >= window[0] && value <= window[1]
      ? "is within its window all along."
      : "is outside its window all along.";
  }
  return `${crossings.map((crossing) => crossed(crossing, say)).join(", ")}.`;
}

const crossed = ({ at, direction, edge }: Crossing, say: (x: number) => string): string =>
  `${direction === "enters" ? "comes into" : "leaves"} its window at ${say(at)} (its ${edge} end)`;

/** What may stay while inputs vary. */
export const holdsOf = (method: DomeMethod) =>
  [
    ["shim", `the ${anglePart[method]} stays`],
    ["target", "the target stays"],
  ] as const;

/** One input against one outcome, a curve for the base and each variant. */
export function SweepPanel() {
  const { sweep } = useComparison();
  const edit = useEdit();
  const compared = useCompared();
  const [zoom, setZoom] = useState(2);
  const { asked, curves, undrawn, held } = useSwept(compared, sweep, zooms[zoom] ?? 1);
  const change = (to: Partial<Comparison["sweep"]>): void =>
    edit((state) => plot(state, (plots) => ({ sweep: { ...plots.sweep, ...to } })));
  const sheet = useSheet(curves, asked, held.target.kind);
  return (
    <section className="sweep" aria-labelledby="sweep-heading">
      <div className="panel-head">
        <h2 id="sweep-heading">Sweep</h2>
        {sheet !== null && (
          <SaveSvg what="sweep" scene={sweepChart({ ...sheet, width: 640, height: 400 }).scene} />
        )}
      </div>
      <div className="panel-acts">
        <FieldChoice
          label="Input"
          instrument={held}
          value={sweep.path}
          onChoose={(path) => change({ path })}
        />
        <OutcomeChoice value={sweep.outcome} onChoose={(outcome) => change({ outcome })} />
        <ChoiceButtons
          legend="While it varies"
          options={holdsOf(held.dome.method)}
          value={sweep.hold}
          onChoose={(hold) => change({ hold })}
        />
        <fieldset className="switch">
          <legend className="unseen">Stretch of the input shown</legend>
          <button type="button" disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}>
            Closer
          </button>
          <button
            type="button"
            disabled={zoom === zooms.length - 1}
            onClick={() => setZoom(zoom + 1)}
          >
            Wider
          </button>
        </fieldset>
      </div>
      {sheet === null ? (
        <p className="panel-note">
          There is no number to sweep here: the base has no plan, or no such measure.
        </p>
      ) : (
        <>
          <SceneRoom
            name="chart"
            first={{ width: 540, height: 340 }}
            draw={(room) => sweepChart({ ...sheet, ...room }).scene}
            over={(room) => (
              <SweepHandle
                drawing={sweepChart({ ...sheet, ...room })}
                asked={asked}
                room={room}
                held={held}
              />
            )}
          />
          <Crossings curves={curves} asked={asked} kind={held.target.kind} />
          {undrawn.length > 0 && (
            <p className="panel-note">Without this input, and not drawn: {undrawn.join(", ")}.</p>
          )}
        </>
      )}
    </section>
  );
}

/** The range stays while the present value moves within it, so that nothing slips under the hand. */
function useSwept(compared: readonly Compared[], sweep: Comparison["sweep"], zoom: number) {
  const [middle, setMiddle] = useState<{ readonly of: string; readonly at: number } | null>(null);
  const base = compared[0]?.instrument;
  const lastGood = useRimwright((state) => state.lastGood);
  const held = (base === undefined ? null : heldInstrument(base, sweep.hold)) ?? lastGood;
  const own = readField(held, sweep.path) ?? 0;
  const { kind } = held.target;
  const of = `${sweep.path} ${sweep.hold} ${held.target.kind} ${held.id}`;
  const rangeAt = (at: number): Range => rangeRound(sweep.path, held.target.kind, at, zoom);
  let range = rangeAt(middle?.of === of ? middle.at : own);
  if (middle?.of !== of || own < range[0] || own > range[1]) {
    setMiddle({ of, at: own });
    range = rangeAt(own);
  }
  const [low, high] = range;
  const asked = useMemo<SweepAsked>(() => ({ ...sweep, range: [low, high] }), [sweep, low, high]);
  const drawn = useMemo(
    () =>
      compared.map(({ name, instrument }, i): SweptCurve | null => {
        const own = heldInstrument(instrument, asked.hold);
        if (own === null || !hasInput(own, asked.path, kind)) return null;
        const swept = sweepOf(instrument, asked);
        return swept === null ? null : { name, line: compareLine(i), sweep: swept };
      }),
    [compared, asked, kind],
  );
  const curves = useMemo(() => drawn.filter((curve) => curve !== null), [drawn]);
  const undrawn = compared.flatMap(({ name }, i) => (drawn[i] == null ? [name] : []));
  return { asked, curves, undrawn, held };
}

function useSheet(
  curves: readonly SweptCurve[],
  { path, outcome, range }: SweepAsked,
  kind: TargetKind,
): Omit<SweepChartOptions, "width" | "height"> | null {
  const units = useRimwright((state) => state.choices.units);
  const [base] = curves;
  if (
    base === undefined ||
    !curves.some(({ sweep }) => sweep.points.some(({ value }) => value !== null))
  )
    return null;
  const across = fieldMeasure(path, kind, units);
  const up = outcomeMeasure(outcome, units);
  const { present } = base.sweep;
  return {
    across,
    up,
    range,
    curves,
    present:
      present === null
        ? null
        : {
            x: present.x,
            says: `now ${across.say(present.x)}${present.value === null ? "" : `: ${up.say(present.value)}`}`,
          },
  };
}
