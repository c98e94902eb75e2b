import type { Instrument } from "./instrument.ts";
import { instrumentSchema } from "./schema.ts";

/** Every field's default: an invented orchestra-size guitar, 14 frets to the body. */
export const defaultInstrument: Instrument = instrumentSchema.parse({
  id: "orchestra-size",
  name: "Orchestra size",
  notes: "Invented for Rimwright, to show the tool at work. It is nobody's guitar.",
});
