import { type Section, sectionOf } from "../../../src/drawing/section/section.ts";
import type { MeasureFormat, SectionOptions } from "../../../src/drawing/section/section-layout.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { formatLength } from "../../../src/instrument/length.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { formatAngle } from "../../../src/instrument/written-number.ts";
import { planned } from "../../support/solved.ts";

const angle = (degrees: number): string => formatAngle(degrees, 2, true);

export const millimetres: MeasureFormat = {
  length: (mm) => formatLength(mm, { unit: "mm", decimals: Math.abs(mm) < 10 ? 2 : 1 }),
  angle,
  unit: "mm",
};
export const inches: MeasureFormat = {
  length: (mm) => formatLength(mm, { unit: "in", decimals: 3 }),
  angle,
  unit: "inch",
};
export const fractions: MeasureFormat = {
  length: (mm) => formatLength(mm, { unit: "in", fraction: 64 }),
  angle,
  unit: "inch",
};

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
  const { givens, profile } = planned(instrument);
  return sectionOf(givens, profile, { ...tablet, ...options });
}
