import type { Instrument, WindowKind } from "../../instrument/instrument.ts";
import { windowKinds } from "../../instrument/outcome-fields.ts";
import { deg, mm } from "../../instrument/phrase.ts";
import type { Check, Outcomes } from "../outcome.ts";
import { standing } from "../standing.ts";

interface Wording {
  readonly name: string;
  readonly tooLow: string;
  readonly tooHigh: string;
  readonly raise: string;
  readonly lower: string;
}

const wordings: Readonly<Record<WindowKind, Wording>> = {
  bridgeClearance: {
    name: "The fret plane over the bridge",
    tooLow: "the frets point into the bridge and leave the saddle little height",
    tooHigh: "the frets pass high over the bridge and the saddle must make it up",
    raise: "A thicker shim, a thicker fingerboard or a thinner bridge.",
    lower: "A thinner shim, a thinner fingerboard or a thicker bridge.",
  },
  saddleExposure: {
    name: "The saddle over the bridge",
    tooLow: "little is left to lower the action with",
    tooHigh: "a tall saddle leans on its slot under tension",
    raise: "A thicker shim, a thicker fingerboard or a thinner bridge.",
    lower: "A thinner shim, a thinner fingerboard or a thicker bridge.",
  },
  stringHeight: {
    name: "The strings over the top",
    tooLow: "they drive the top weakly and the hand touches it",
    tooHigh: "they pull harder on the top than it is braced for",
    raise: "A thicker shim or a thicker fingerboard.",
    lower: "A thinner shim or a thinner fingerboard.",
  },
  breakAngle: {
    name: "The strings' break over the saddle",
    tooLow: "they bear on it weakly",
    tooHigh: "they push it over toward the neck",
    raise: "Pins nearer the saddle, deeper ramps, or a taller saddle.",
    lower: "Pins farther from the saddle, shallower ramps, or a lower saddle.",
  },
  pitch: {
    name: "The pitch",
    tooLow: "it is below what you accept",
    tooHigh: "it is above what you accept",
    raise: "A thicker shim.",
    lower: "A thinner shim.",
  },
};

/** One check for each outcome outside the range its builder accepts. */
export const windowChecks = (instrument: Instrument, outcomes: Outcomes): readonly Check[] =>
  windowKinds.flatMap((kind) => {
    const range = instrument.windows[kind];
    const value = outcomes[kind];
    if (standing(value, range) !== "outside") return [];
    const [low, high] = range;
    const { name, tooLow, tooHigh, raise, lower } = wordings[kind];
    const show = kind === "breakAngle" || kind === "pitch" ? deg : mm;
    const below = value < low;
    const means = [name, ", ", show(value), ", is ", show(below ? low - value : value - high)];
    means.push(below ? " under" : " over", " its window: ", below ? tooLow : tooHigh, ".");
    return [
      {
        id: `window-${kind}`,
        grade: "warn" as const,
        field: `windows.${kind}.${below ? 0 : 1}` as const,
        means,
        fix: [below ? raise : lower],
      },
    ];
  });
