import { type AsBuilt, emptyAsBuilt } from "../../src/instrument/as-built/as-built.ts";
import {
  isMeasurementKey,
  type MeasurementKey,
} from "../../src/instrument/as-built/measurement-fields.ts";
import type { StepId } from "../../src/instrument/as-built/steps.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { type Outlook, outlookOf } from "../../src/profile/bench/outlook.ts";

/** A record with these values measured and these steps done. */
export function recordOf(
  values: Readonly<Partial<Record<MeasurementKey, number>>>,
  steps: readonly StepId[] = [],
): AsBuilt {
  const readings = Object.entries(values)
    .filter(([key]) => isMeasurementKey(key))
    .map(([key, value]) => [key, { value, date: "2026-05-14", note: "" }]);
  return {
    ...emptyAsBuilt,
    readings: Object.fromEntries(readings),
    done: Object.fromEntries(steps.map((step) => [step, "2026-05-14"])),
  };
}

export function outlookFrom(instrument: Instrument, record: AsBuilt): Outlook {
  const result = outlookOf(instrument, record);
  if (!result.ok) throw new Error(JSON.stringify(result));
  return result.outlook;
}
