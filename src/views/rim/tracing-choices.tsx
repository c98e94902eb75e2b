import { Fragment, useId, useState } from "react";
import type { TracingEnds } from "../../geometry/outline/tracing.ts";
import type { Place } from "../../geometry/polyline.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { Select } from "../fields/select.tsx";
import type { HalvesUse } from "./tracing-trial.ts";

interface TracingTextProps {
  readonly text: string;
  readonly onText: (text: string) => void;
}

/** A drawing pasted, or read from a file on this device. Nothing leaves it. */
export function TracingText({ text, onText }: TracingTextProps) {
  const id = useId();
  const [file, setFile] = useState("");
  const open = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return;
    onText(await chosen.text());
    setFile(chosen.name);
  };
  return (
    <div className="rim-source">
      <label htmlFor={`${id}-file`}>A file, .csv or .svg</label>
      <input
        id={`${id}-file`}
        type="file"
        accept=".csv,.txt,.svg,text/csv,text/plain,image/svg+xml"
        onChange={({ target }) => void open(target.files?.[0])}
      />
      <label htmlFor={`${id}-text`}>Or paste it here</label>
      <textarea
        id={`${id}-text`}
        rows={3}
        spellCheck={false}
        placeholder="0, 0&#10;5.4, 56.0&#10;17.1, 97.2"
        value={text.length > shown ? `${text.slice(0, shown)}…` : text}
        readOnly={text.length > shown}
        onChange={({ target }) => {
          setFile("");
          onText(target.value);
        }}
      />
      {text !== "" && (
        <button
          type="button"
          onClick={() => {
            setFile("");
            onText("");
          }}
        >
          Clear {file === "" ? "the drawing" : file}
        </button>
      )}
    </div>
  );
}

/** A longer text is shown in part, and is not edited by hand. */
const shown = 20_000;

export type TracingUnit = "file" | "mm" | "in" | "px";

/** mm of one unit of the drawing. SVG's own px are 96 to the inch. */
export const unitSize = (unit: TracingUnit, stated: number | null): number =>
  unit === "file" ? (stated ?? 1) : { mm: 1, in: 25.4, px: 25.4 / 96 }[unit];

const errors = [0.1, 0.25, 0.5, 1];

interface TracingChoicesProps {
  readonly unit: TracingUnit;
  readonly error: number;
  /** Whether the file says its own unit. */
  readonly stated: boolean;
  readonly onUnit: (unit: TracingUnit) => void;
  readonly onError: (mm: number) => void;
}

/** The drawing's unit, and how near the curve must come to it. */
export function TracingChoices({ unit, error, stated, onUnit, onError }: TracingChoicesProps) {
  const units: readonly (readonly [TracingUnit, string])[] = [
    ...(stated ? [["file", "as the file says"] as const] : []),
    ["mm", "mm"],
    ["in", "inches"],
    ["px", "px, 96 to the inch"],
  ];
  return (
    <div className="value-entries">
      <Select label="Drawn in" value={unit} options={units} onChoose={onUnit} />
      <Select
        label="Fitted within"
        value={error}
        options={errors.map((mm) => [mm, `${mm} mm`])}
        onChoose={onError}
      />
    </div>
  );
}

const useNames: Readonly<Record<HalvesUse, string>> = {
  both: "both halves, as drawn",
  bass: "bass half, mirrored",
  treble: "treble half, mirrored",
  "treble alone": "treble half alone",
  "bass alone": "bass half alone",
};

interface HalvesProps {
  readonly uses: readonly HalvesUse[];
  readonly use: HalvesUse;
  /** Whether bass and treble side are to change places. */
  readonly over: boolean;
  readonly onUse: (use: HalvesUse) => void;
  readonly onOver: (over: boolean) => void;
}

/** What is made of the halves drawn, and which side of the drawing is the bass side. */
export function HalvesChoices({ uses, use, over, onUse, onOver }: HalvesProps) {
  const sides = [
    ["drawn", "as drawn, from above"],
    ["over", "changed over"],
  ] as const;
  return (
    <div className="value-entries">
      <Select
        label="Use"
        value={use}
        options={uses.map((one) => [one, useNames[one]])}
        onChoose={onUse}
      />
      <Select
        label="Bass and treble side"
        value={over ? "over" : "drawn"}
        options={sides}
        onChoose={(side) => onOver(side === "over")}
      />
    </div>
  );
}

interface EndsProps {
  readonly ends: TracingEnds;
  /** Changes when the ends were set otherwise than by typing. */
  readonly round: number;
  readonly onEnds: (ends: TracingEnds) => void;
  readonly onTurn: () => void;
}

/** Where the drawing's tail and neck end are, in its own coordinates. */
export function EndsEntry({ ends, round, onEnds, onTurn }: EndsProps) {
  const { tail, neck } = ends;
  const far = { least: -1e5, most: 1e5 };
  const entry = (label: string, value: number, take: (mm: number) => TracingEnds) => (
    <LengthEntry
      {...{ label, value, ...far }}
      key={label}
      onChange={(mm) => mm !== null && onEnds(take(mm))}
    />
  );
  const at = (place: Place, axis: 0 | 1, mm: number): Place =>
    axis === 0 ? [mm, place[1]] : [place[0], mm];
  return (
    <details className="rim-ends">
      <summary>Tail and neck end on the drawing</summary>
      <div className="value-entries">
        <Fragment key={round}>
          {entry("Tail, x", tail[0], (mm) => ({ tail: at(tail, 0, mm), neck }))}
          {entry("Tail, y", tail[1], (mm) => ({ tail: at(tail, 1, mm), neck }))}
          {entry("Neck end, x", neck[0], (mm) => ({ tail, neck: at(neck, 0, mm) }))}
          {entry("Neck end, y", neck[1], (mm) => ({ tail, neck: at(neck, 1, mm) }))}
        </Fragment>
        <button type="button" onClick={onTurn}>
          Turn end for end
        </button>
      </div>
    </details>
  );
}
