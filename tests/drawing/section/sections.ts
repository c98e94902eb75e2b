import { type Section, sectionOf } from "../../../src/drawing/section/section.ts";
import type { SectionFormat, SectionOptions } from "../../../src/drawing/section/section-layout.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { givensOf } from "../../../src/profile/givens.ts";
import { measureFormat } from "../../../src/views/figures/measure-format.ts";
import { solved, solvedSeat } from "../../support/solved.ts";

export const millimetres: SectionFormat = measureFormat("mm");
export const inches: SectionFormat = measureFormat("in");
export const fractions: SectionFormat = measureFormat("in-fraction");

export function preset(id: string): Instrument {
  const found = presets.find((instrument) => instrument.id === id);
  if (found === undefined) throw new Error(`no preset is called ${id}`);
  return found;
}

const tablet: SectionOptions = {
  width: 760,
  height: 330,
  stretch: 5,
  turned: false,
  words: millimetres,
};

export function drawn(instrument: Instrument, options: Partial<SectionOptions> = {}): Section {
  const set = givensOf(instrument);
  if (!set.ok) throw new Error(JSON.stringify(set.objection));
  const profile = instrument.dome.method === "seat" ? solvedSeat(instrument) : solved(instrument);
  return sectionOf(set.givens, profile, { ...tablet, ...options });
}
