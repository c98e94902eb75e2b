import type { Instrument, WindowKind } from "../../instrument/instrument.ts";
import { anglePart, windowKinds } from "../../instrument/outcome-fields.ts";
import { deg, mm, type Phrase } from "../../instrument/phrase.ts";
import type { Check, Outcomes } from "../outcome.ts";
import { leastShown, standing } from "../standing.ts";

interface Wording {
  readonly name: string;
  readonly tooLow: string;
  /** In place of `tooLow` where the outcome is below 0. */
  readonly belowNothing: string;
  readonly tooHigh: string;
  /** What would do so; `part` is the shim, or the spacer. */
  readonly raise: (part: string) => string;
  readonly lower: (part: string) => string;
}

const wordings: Readonly<Record<WindowKind, Wording>> = {
  bridgeClearance: {
    name: "The fret plane over the bridge",
    tooLow: "the saddle is left little height",
    belowNothing: "the frets point into the bridge and leave the saddle little height",
    tooHigh: "the frets pass high over the bridge and the saddle must make it up",
    raise: (part) => `A thicker ${part}, a thicker fingerboard or a thinner bridge.`,
    lower: (part) => `A thinner ${part}, a thinner fingerboard or a thicker bridge.`,
  },
  saddleExposure: {
    name: "The saddle over the bridge",
    tooLow: "little is left to lower the action with",
    belowNothing: "nothing of it would stand over the bridge",
    tooHigh: "a tall saddle leans on its slot under tension",
    raise: (part) => `A thicker ${part}, a thicker fingerboard or a thinner bridge.`,
    lower: (part) => `A thinner ${part}, a thinner fingerboard or a thicker bridge.`,
  },
  stringHeight: {
    name: "The strings over the top",
    tooLow: "they drive the top weakly and the hand touches it",
    belowNothing: "they would run into the top",
    tooHigh: "they pull harder on the top than it is braced for",
    raise: (part) => `A thicker ${part} or a thicker fingerboard.`,
    lower: (part) => `A thinner ${part} or a thinner fingerboard.`,
  },
  breakAngle: {
    name: "The strings' break over the saddle",
    tooLow: "they bear on it weakly",
    belowNothing: "they would not bear on it at all",
    tooHigh: "they push it over toward the neck",
    raise: () => "Pins nearer the saddle, deeper ramps, or a taller saddle.",
    lower: () => "Pins farther from the saddle, shallower ramps, or a lower saddle.",
  },
  pitch: {
    name: "The pitch",
    tooLow: "it is below what you accept",
    belowNothing: "the neck would lean forward, below what you accept",
    tooHigh: "it is above what you accept",
    raise: (part) => `A thicker ${part}.`,
    lower: (part) => `A thinner ${part}.`,
  },
};

/** One check for each outcome outside the range its builder accepts. */
export function windowChecks(instrument: Instrument, outcomes: Outcomes): readonly Check[] {
  const part = anglePart[instrument.dome.method];
  return windowKinds
    .filter((kind) => standing(outcomes[kind], instrument.windows[kind]) === "outside")
    .map((kind) => {
      const below = outcomes[kind] < instrument.windows[kind][0];
      return {
        id: `window-${kind}`,
        grade: "warn",
        field: `windows.${kind}.${below ? 0 : 1}`,
        means: missSaid(kind, outcomes[kind], instrument),
        fix: [(below ? wordings[kind].raise : wordings[kind].lower)(part)],
      };
    });
}

/** By how much the window is missed, and what that means. */
function missSaid(kind: WindowKind, value: number, { windows }: Instrument): Phrase {
  const [low, high] = windows[kind];
  const { name, tooLow, tooHigh, belowNothing } = wordings[kind];
  const show = kind === "breakAngle" || kind === "pitch" ? deg : mm;
  const below = value < low;
  const miss = below ? low - value : value - high;
  const means = below ? (value < 0 ? belowNothing : tooLow) : tooHigh;
  const by = miss < leastShown ? ["just"] : [show(miss)];
  const side = below ? " under its window: " : " over its window: ";
  return [name, ", ", show(value), ", is ", ...by, side, means, "."];
}
