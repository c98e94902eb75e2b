import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";

/** A preset by its id. Throws where there is none. */
export function preset(id: string): Instrument {
  const found = presets.find((one) => one.id === id);
  if (found === undefined) throw new Error(`There is no preset ${id}.`);
  return found;
}
