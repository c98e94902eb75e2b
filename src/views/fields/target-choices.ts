import type { TargetKind } from "../../instrument/instrument.ts";
import { targetFields } from "../../instrument/outcome-fields.ts";

interface Choice {
  /** On the button, where the question stands over it. */
  readonly short: string;
  readonly name: string;
  /** When a builder would choose it. */
  readonly when: string;
}

export const targetChoices: Readonly<Record<TargetKind, Choice>> = {
  pitch: {
    short: "Pitch",
    name: targetFields.pitch.label,
    when: "When the angle is given: a heel already cut, or the pitch you always use.",
  },
  bridgeClearance: {
    short: "Fret plane",
    name: targetFields.bridgeClearance.label,
    when: "When the bridge is made: a straightedge on the frets should just clear it.",
  },
  saddleExposure: {
    short: "Saddle",
    name: targetFields.saddleExposure.label,
    when: "When you want so much saddle to work with, now and in years to come.",
  },
  stringHeight: {
    short: "String height",
    name: targetFields.stringHeight.label,
    when: "When the strings' height over the top comes first: it drives the top.",
  },
  shim: {
    short: "Shim",
    name: "Shim itself, as stated",
    when: "When you have the stick and want to know what it gives.",
  },
  spacer: {
    short: "Spacer",
    name: "Spacer itself, as stated",
    when: "When you have the spacer and want to know what it gives.",
  },
};
