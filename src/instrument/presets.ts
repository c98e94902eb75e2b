import { defaultInstrument } from "./default-instrument.ts";
import { withVersion } from "./file-version.ts";
import type { Instrument } from "./instrument.ts";

type Groups = "body" | "dome" | "shim" | "neck" | "bridge" | "strings" | "target" | "windows";

type Variation = Pick<Instrument, "id" | "name"> & {
  readonly notes: string;
} & { readonly [Group in Groups]?: Partial<Instrument[Group]> };

/** The default instrument with what is stated otherwise. */
export function variation({ id, name, notes, ...groups }: Variation): Instrument {
  const base = defaultInstrument;
  return withVersion({
    ...base,
    id,
    name,
    notes: `Invented for Rimwright; it is nobody's guitar. ${notes}`,
    body: { ...base.body, ...groups.body },
    dome: { ...base.dome, ...groups.dome },
    shim: { ...base.shim, ...groups.shim },
    neck: { ...base.neck, ...groups.neck },
    bridge: { ...base.bridge, ...groups.bridge },
    strings: { ...base.strings, ...groups.strings },
    target: { ...base.target, ...groups.target },
    windows: { ...base.windows, ...groups.windows },
  });
}

const threeQuarter = variation({
  id: "three-quarter",
  name: "Three-quarter size",
  notes: "A small body with a short scale, 14 frets to the body.",
  body: {
    length: 432,
    lowerBoutWidth: 320,
    lowerBoutAt: 108,
    waistWidth: 198,
    waistAt: 256,
    upperBoutWidth: 236,
    upperBoutAt: 348,
    neckEndWidth: 54,
    depthTail: 96,
    depthNeck: 80,
    soundholeAt: 296,
    soundholeDiameter: 88,
  },
  dome: { flatLength: 90, blendLength: 40 },
  neck: { scale: 580, lastFret: 19, heelLength: 82 },
  bridge: { compensation: 3 },
});

const parlour = variation({
  id: "parlour",
  name: "Parlour size, 12 frets to the body",
  notes: "A long narrow body; the join at fret 12 sets the bridge well down the lower bout.",
  body: {
    length: 480,
    lowerBoutWidth: 340,
    lowerBoutAt: 122,
    waistWidth: 210,
    waistAt: 288,
    upperBoutWidth: 250,
    upperBoutAt: 388,
    neckEndWidth: 62,
    depthTail: 102,
    depthNeck: 84,
    soundholeAt: 326,
    soundholeDiameter: 95,
  },
  dome: { flatLength: 102 },
  neck: { scale: 630, joinFret: 12, lastFret: 18, heelLength: 86 },
  bridge: { thickness: 9 },
  strings: { spreadNut: 38, spreadSaddle: 56 },
});

const dreadnought = variation({
  id: "dreadnought-size",
  name: "Dreadnought size",
  notes: "Length, lower bout and tail depth as that size is commonly given; the rest is made up.",
  body: {
    length: 508,
    lowerBoutWidth: 397,
    lowerBoutAt: 130,
    waistWidth: 274,
    waistAt: 300,
    upperBoutWidth: 292,
    upperBoutAt: 412,
    neckEndWidth: 64,
    depthTail: 124,
    depthNeck: 100,
    soundholeAt: 356,
  },
  neck: { heelLength: 104 },
});

const jumbo = variation({
  id: "jumbo",
  name: "Jumbo size",
  notes: "A wide lower bout on a long body.",
  body: {
    length: 530,
    lowerBoutWidth: 432,
    lowerBoutAt: 138,
    waistWidth: 258,
    waistAt: 316,
    upperBoutWidth: 322,
    upperBoutAt: 428,
    neckEndWidth: 66,
    depthTail: 124,
    depthNeck: 98,
    soundholeAt: 372,
    soundholeDiameter: 102,
  },
  dome: { flatLength: 105 },
  neck: { heelLength: 102 },
  bridge: { thickness: 8.2 },
});

const fourCourses = variation({
  id: "four-courses",
  name: "Eight strings in four courses",
  notes: "An orchestra-size body for four pairs of strings.",
  neck: { scale: 610, lastFret: 19, fingerboardRadius: null },
  bridge: { thickness: 8.4, compensation: 2.8 },
  strings: {
    count: 8,
    spreadNut: 30,
    spreadSaddle: 46,
    pairGap: 2.4,
    actionBass: 2,
    actionTreble: 1.7,
  },
  target: { value: 3.2 },
});

const twelveString = variation({
  id: "twelve-string",
  name: "Twelve-string",
  notes: "A dreadnought-size body for six pairs of strings, 14 frets to the body.",
  body: dreadnought.body,
  neck: { ...dreadnought.neck, lastFret: 19 },
  bridge: { thickness: 8.4, compensation: 4 },
  strings: { count: 12, spreadNut: 42, spreadSaddle: 60, pairGap: 2.4 },
});

/** Invented instruments to start from, small to large; the default one is among them. */
export const presets: readonly Instrument[] = [
  threeQuarter,
  parlour,
  defaultInstrument,
  dreadnought,
  jumbo,
  fourCourses,
  twelveString,
];
