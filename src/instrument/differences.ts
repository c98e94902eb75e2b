import { dequal as equal } from "dequal/lite";
import { readField } from "./field-value.ts";
import { type FieldPath, fieldPaths } from "./fields.ts";
import type { Instrument } from "./instrument.ts";

/** In what two instruments differ: the numbers that differ, and what is no number. */
export interface Differences {
  readonly fields: readonly FieldPath[];
  readonly others: readonly (
    | "the outline traced"
    | "where the flat is sanded"
    | "what is aimed for"
  )[];
}

/** What of an instrument is another than on `model`; its name, its notes and its tolerances are its own. */
export function differencesFrom(model: Instrument, instrument: Instrument): Differences {
  const isAim = model.target.kind === instrument.target.kind;
  const tracings = ({ body }: Instrument) => [body.tracing, body.tracingTreble, body.leftHanded];
  return {
    fields: fieldPaths.filter(
      (path) =>
        (path !== "target.value" || isAim) &&
        readField(model, path) !== readField(instrument, path),
    ),
    others: [
      ...(equal(tracings(model), tracings(instrument)) ? [] : (["the outline traced"] as const)),
      ...(model.dome.method === instrument.dome.method
        ? []
        : (["where the flat is sanded"] as const)),
      ...(isAim ? [] : (["what is aimed for"] as const)),
    ],
  };
}
