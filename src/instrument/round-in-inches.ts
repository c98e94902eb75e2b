import { readField, writeField } from "./field-value.ts";
import { fieldAt, fieldPaths } from "./fields.ts";
import type { Instrument } from "./instrument.ts";
import type { Units } from "./length.ts";

const inch = 25.4;

/**
 * An invented instrument as it is started from: where inches are shown, each of its lengths is the nearest that a
 * rule with inches reads: 1/8 in from 6 in on, 1/16 in from 1 in on, 1/64 in below. What is too small for a
 * rule, such as a fret's height, is in thousandths, as gauges are. A traced body is as long as it was traced. What a
 * builder states is never rounded.
 */
export function roundIn(preset: Instrument, units: Units): Instrument {
  if (units === "mm") return preset;
  const { tracing, tracingTreble } = preset.body;
  const traced = (tracing ?? tracingTreble) === undefined ? null : "body.length";
  return fieldPaths.reduce((instrument, path) => {
    const value = readField(instrument, path);
    const { quantity } = fieldAt(path, instrument.target.kind);
    return value === null || quantity !== "length" || path === traced
      ? instrument
      : writeField(instrument, path, rounded(value, path.startsWith("windows.")));
  }, preset);
}

function rounded(mm: number, byRule: boolean): number {
  const size = Math.abs(mm) / inch;
  const parts = size >= 6 ? 8 : size >= 1 ? 16 : size >= 1 / 8 || byRule ? 64 : 1000;
  return (Math.round((mm / inch) * parts) / parts) * inch;
}
