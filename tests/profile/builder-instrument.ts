import fc from "fast-check";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { plausibleInstrument } from "../support/random-instrument.ts";

/** What a builder might bring, some without a dome but with arched braces, some neither. */
export const builderInstrument: fc.Arbitrary<Instrument> = fc
  .record({ instrument: plausibleInstrument, arched: fc.constantFrom(null, 4572, 8534.4) })
  .map(({ instrument, arched }) =>
    instrument.dome.dishRadius === null
      ? { ...instrument, dome: { ...instrument.dome, braceRadius: arched } }
      : instrument,
  );

/** The same, all with a dome. */
export const domedInstrument: fc.Arbitrary<Instrument> = plausibleInstrument.map((instrument) =>
  instrument.dome.dishRadius === null
    ? { ...instrument, dome: { ...instrument.dome, dishRadius: 8534.4, braceRadius: 7620 } }
    : instrument,
);
