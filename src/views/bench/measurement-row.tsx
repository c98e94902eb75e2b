import { useMemo } from "react";
import { noteLimit } from "../../instrument/as-built/as-built.ts";
import {
  type MeasurementKey,
  measurementField,
} from "../../instrument/as-built/measurement-fields.ts";
import { styleOf } from "../../instrument/field-text.ts";
import type { Units } from "../../instrument/length.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { asExpected, type Expected, expectedOf } from "../../profile/bench/expected.ts";
import {
  dateMeasurement,
  measurementText,
  noteMeasurement,
  putMeasurement,
  readMeasurement,
  stepMeasurement,
  typeMeasurement,
} from "../../store/document/as-built-edits.ts";
import { NumberEntry } from "../fields/number-entry.tsx";
import { height } from "../figures/measures.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { Mark } from "../verdict/standing-mark.tsx";
import { today, useRecord } from "./bench-context.ts";
import { DayEntry } from "./day-entry.tsx";
import type { Workpiece } from "./use-outlook.ts";

interface Props extends Workpiece {
  readonly measurement: MeasurementKey;
}

/** One thing to measure: what it should come to, what it came to, when, and what there is to say of it. */
export function MeasurementRow({ instrument, profile, measurement: key }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const record = useRecord();
  const text = useRimwright((state) => measurementText(state, key, units));
  const typed = useRimwright((state) => state.readingTexts[key]);
  const edit = useEdit();
  const field = measurementField(key);
  const taken = record.readings[key];
  const expected = useMemo(
    () => expectedOf(instrument, record, key, { ok: true, profile }),
    [instrument, record, key, profile],
  );
  const read = typed === undefined ? null : readMeasurement(key, typed);
  const trouble = read !== null && !read.ok ? sayPhrase(read.why, units) : null;
  const id = `measurement-${key}`;
  const start = expected?.value ?? field.default;
  const step = (steps: number): void =>
    edit((state) => stepMeasurement(state, key, steps, start, units, today()));
  return (
    <div className="reading">
      <label htmlFor={id}>{field.label}</label>
      <p className="measurement-expected">
        {expected === null
          ? "Nothing can be expected yet."
          : `Expected ${height(expected.value, units)}, ± ${height(expected.within, units)}`}
      </p>
      <p className="measurement-how" id={`${id}-how`}>
        {field.howTo}
      </p>
      <div className="measurement-entry">
        <NumberEntry
          {...{ id, label: field.label, name: key, text, unit: styleOf(field, units).unit }}
          invalid={trouble !== null}
          describedBy={`${id}-how ${id}-said`}
          onText={(next) =>
            edit((state) => typeMeasurement(state, key, { text: next, units }, today()))
          }
          onStep={step}
        />
        {expected !== null && taken === undefined && (
          <button
            type="button"
            className="as-expected"
            aria-label={`As expected: ${field.label}`}
            onClick={() => edit((state) => putMeasurement(state, key, start, units, today()))}
          >
            As expected
          </button>
        )}
      </div>
      <p
        id={`${id}-said`}
        className={trouble === null ? "measurement-said" : "measurement-trouble"}
      >
        {trouble ??
          (taken === undefined || expected === null ? (
            ""
          ) : (
            <Against value={taken.value} expected={expected} units={units} />
          ))}
      </p>
      {taken !== undefined && (
        <div className="measurement-when">
          <DayEntry
            shown="Measured on"
            label={`${field.label}: measured on`}
            day={taken.date}
            onDay={(day) => edit((state) => dateMeasurement(state, key, day))}
          />
          <label>
            Note
            <input
              aria-label={`${field.label}: note`}
              maxLength={noteLimit}
              value={taken.note}
              onChange={({ target }) => edit((state) => noteMeasurement(state, key, target.value))}
            />
          </label>
        </div>
      )}
    </div>
  );
}

interface AgainstProps {
  readonly value: number;
  readonly expected: Expected;
  readonly units: Units;
}

/** How a measured value stands to the expected one. */
function Against({ value, expected, units }: AgainstProps) {
  const off = value - expected.value;
  const stands = asExpected(value, expected) ? "within" : "outside";
  const by = `${height(Math.abs(off), units)} ${off < 0 ? "under" : "over"} the figure expected`;
  return (
    <span className={`standing standing-${stands}`}>
      <Mark of={stands} />
      {by}, {stands} its tolerance
    </span>
  );
}
