import { useState } from "react";
import type { Instrument } from "../../instrument/instrument.ts";

/** What of an instrument its plan does not follow from. */
const besides: readonly string[] = ["name", "notes"] satisfies readonly (keyof Instrument)[];

function sameNumbers(a: Instrument, b: Instrument): boolean {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof Instrument>;
  return [...keys].every((key) => besides.includes(key) || a[key] === b[key]);
}

/** The same object while only its name or its notes change, so that work on it is not begun anew. */
export function useNumbers(instrument: Instrument): Instrument {
  const [kept, setKept] = useState(instrument);
  if (kept === instrument || sameNumbers(kept, instrument)) return kept;
  setKept(instrument);
  return instrument;
}
