import { useMemo } from "react";
import { type MapChartOptions, mapChart } from "../../drawing/charts/map-chart.ts";
import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { hasInput, heldInstrument } from "../../profile/comparison/sweep.ts";
import type { Comparison } from "../../store/document/comparison.ts";
import { plot } from "../../store/document/variant-edits.ts";
import type { MapJob } from "../../worker/messages.ts";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { FieldChoice } from "../fields/field-choice.tsx";
import { SaveSvg, SceneRoom } from "../figures/chart-figure.tsx";
import { fieldMeasure, outcomeMeasure } from "../figures/chart-measures.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { type Running, useJob } from "../use-job.ts";
import { rangeRound } from "./input-range.ts";
import { OutcomeChoice } from "./outcome-choice.tsx";
import { holdsOf } from "./sweep-panel.tsx";
import { useComparison, useNumbers } from "./use-comparison.ts";

/** Two inputs against one outcome, with the part where every check passes. */
export function MapPanel() {
  const base = useNumbers(useRimwright((state) => state.lastGood));
  const units = useRimwright((state) => state.choices.units);
  const { map } = useComparison();
  const edit = useEdit();
  const held = useMemo(() => heldInstrument(base, map.hold) ?? base, [base, map.hold]);
  const job = useMemo(() => jobOf(base, held, map), [base, held, map]);
  const running = useJob<"map">(job);
  const { state, progress } = running;
  const change = (to: Partial<Comparison["map"]>): void =>
    edit((state) => plot(state, (plots) => ({ map: { ...plots.map, ...to } })));
  const answer = progress?.answer ?? null;
  const { kind } = held.target;
  const sheet: Omit<MapChartOptions, "width" | "height"> | null =
    answer === null || job === null
      ? null
      : {
          across: fieldMeasure(map.across, kind, units),
          up: fieldMeasure(map.up, kind, units),
          outcome: outcomeMeasure(map.outcome, units),
          acrossRange: job.asked.across.range,
          upRange: job.asked.up.range,
          map: answer,
        };
  const current = state === "done";
  return (
    <section className="map" aria-labelledby="map-heading" aria-busy={!current}>
      <div className="panel-head">
        <h2 id="map-heading">Map of two inputs</h2>
        {sheet !== null && current && (
          <SaveSvg what="map" scene={mapChart({ ...sheet, width: 640, height: 480 })} />
        )}
      </div>
      <div className="panel-acts">
        <FieldChoice
          label="Along"
          instrument={held}
          value={map.across}
          without={[map.up]}
          onChoose={(across) => change({ across })}
        />
        <FieldChoice
          label="Up"
          instrument={held}
          value={map.up}
          without={[map.across]}
          onChoose={(up) => change({ up })}
        />
        <OutcomeChoice value={map.outcome} onChoose={(outcome) => change({ outcome })} />
        <ChoiceButtons
          legend="While they vary"
          options={holdsOf(held.dome.method)}
          value={map.hold}
          onChoose={(hold) => change({ hold })}
        />
      </div>
      {job === null ? (
        <p className="panel-note">This instrument has no such measure: choose another.</p>
      ) : (
        <>
          <SceneRoom
            name="chart"
            first={{ width: 540, height: 340 }}
            draw={(room) => (sheet === null || !current ? null : mapChart({ ...sheet, ...room }))}
            over={() => (current ? null : <Working running={running} />)}
          />
          <p className="panel-note">
            Shaded: every check passes, every window is met. Thick lines: an end of the outcome’s
            window. The ring is the base.
          </p>
        </>
      )}
    </section>
  );
}

/** How far the map is, and what stops it: over a traced outline it takes seconds. */
function Working({
  running: { state, progress, stop, again },
}: {
  readonly running: Running<"map">;
}) {
  const goes = state === "running" || state === "waiting";
  return (
    <div className="working">
      <p>{goes ? "Working out the map…" : wordFor[state]}</p>
      {goes && (
        <progress
          aria-label="Map worked out"
          value={progress?.answer === null ? progress.share : 0}
        />
      )}
      <button type="button" onClick={goes ? stop : again}>
        {goes ? "Stop" : "Draw the map"}
      </button>
    </div>
  );
}

const wordFor = {
  failed: "The map could not be worked out here. It is tried again by itself.",
  stopped: "Stopped.",
  done: "",
} as const;

function jobOf(base: Instrument, held: Instrument, map: Comparison["map"]): MapJob | null {
  const axis = (path: FieldPath) => {
    const value = readField(held, path);
    return value === null || !hasInput(held, path, held.target.kind)
      ? null
      : { path, range: rangeRound(path, held.target.kind, value, 1) };
  };
  const [across, up] = [axis(map.across), axis(map.up)];
  if (across === null || up === null) return null;
  const { outcome, hold } = map;
  return { kind: "map", instrument: base, asked: { across, up, outcome, hold } };
}
