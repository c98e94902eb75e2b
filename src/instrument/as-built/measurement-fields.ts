import type { DomeMethod } from "../dome-fields.ts";
import type { Field } from "../field.ts";
import type { FieldPath } from "../fields.ts";
import { fields } from "../fields.ts";
import type { StepId } from "./steps.ts";

/** One thing to measure: its name and limits, at which step, and the stated number it takes the place of. */
export interface MeasurementField extends Field {
  readonly at: StepId;
  /** Null where it takes the place of none. */
  readonly replaces: Exclude<FieldPath, "target.value"> | null;
}

const height = { quantity: "length", min: -50, max: 50, default: 0, step: 0.05 } as const;
const depth = { quantity: "length", min: 0, max: 400, default: 0, step: 0.1 } as const;

/** What no field of an instrument states. */
const own = (
  at: StepId,
  label: string,
  howTo: string,
  size: typeof height | typeof depth = height,
): MeasurementField => ({ at, label, howTo, replaces: null, ...size });

/** A stated number, measured. */
const made = (
  at: StepId,
  path: Exclude<FieldPath, "target.value">,
  label = fields[path].label,
): MeasurementField => ({ ...fields[path], at, label, replaces: path });

const sideHow =
  "Along the side, from the finished top edge to the finished back edge; the mean of both sides.";
const dishHow =
  "Along the side, from the top edge to the back edge or to a mark that stays; the mean of both sides.";
const gapHow =
  "Straightedge on the flat, or on the sanded seat, along the centreline: from its edge down to the top, at the saddle line.";
const clearanceHow =
  "Straightedge along the frets: from the bridge's top up to its edge, at the saddle line.";

/** What can be measured on the way, in the order of work. mm. */
const measurementFields = {
  breakBeforeDish: own("dish", "Side depth at the break, before the dish", dishHow, depth),
  tailBeforeDish: own("dish", "Side depth at the tail, before the dish", dishHow, depth),
  breakAfterDish: own("dish", "Side depth at the break, after the dish", dishHow, depth),
  tailAfterDish: own("dish", "Side depth at the tail, after the dish", dishHow, depth),
  depthTail: own("check", "Side depth at the tail", sideHow, depth),
  depthLowerBout: own("check", "Side depth at the lower bout", sideHow, depth),
  depthWaist: own("check", "Side depth at the waist", sideHow, depth),
  depthBreak: own("check", "Side depth at the break", sideHow, depth),
  shim: {
    ...own("shim", "Shim used", "Calipers on the shim, at the edge the rim rests on.", depth),
    max: 200,
  },
  contact: made("shim", "shim.contact"),
  flatLength: made("flat", "dome.flatLength", "Break reached, from the neck end"),
  depthUpperBout: own("flat", "Side depth at the upper bout", sideHow, depth),
  depthNeckEnd: own("flat", "Side depth at the neck end", sideHow, depth),
  overrun: own(
    "overrun",
    "Overrun past the break",
    "Along the centreline, from the break to where the board's marks end on the domed edge.",
    depth,
  ),
  gapBefore: own("offer", "Straightedge gap, top offered up", gapHow),
  spacer: {
    ...own("spacer", "Spacer used", "Calipers on the spacer, where the bar rests on it.", depth),
    max: 200,
  },
  plateLeft: {
    ...own(
      "seat",
      "Plate left at the fingerboard's end",
      "Depth gauge or calipers, in the middle of the seat.",
      depth,
    ),
    max: 20,
  },
  gapAfter: own("gap", "Straightedge gap, top glued", gapHow),
  fingerboardThickness: made("fingerboard", "neck.fingerboardThickness"),
  fretHeight: made("fingerboard", "neck.fretHeight"),
  bridgeThickness: made("bridge", "bridge.thickness"),
  bridgeClearance: own("bridge", "Fret plane over the bridge", clearanceHow),
  saddleExposure: own(
    "strings",
    "Saddle exposed",
    "In the middle, at pitch: from the bridge's top to the top of the saddle.",
  ),
  stringHeight: own(
    "strings",
    "String height over the top",
    "In the middle at the saddle, at pitch: from the top to the underside of the strings.",
  ),
  actionBass: made("strings", "strings.actionBass"),
  actionTreble: made("strings", "strings.actionTreble"),
  relief: made("strings", "neck.relief"),
  weekRelief: own("week", "Relief, after a week", fields["neck.relief"].howTo),
  weekClearance: own("week", "Fret plane over the bridge, after a week", clearanceHow),
  weekActionBass: own("week", "Bass action, after a week", fields["strings.actionBass"].howTo),
  weekActionTreble: own(
    "week",
    "Treble action, after a week",
    fields["strings.actionTreble"].howTo,
  ),
  yearRelief: own("year", "Relief, after a year", fields["neck.relief"].howTo),
  yearClearance: own("year", "Fret plane over the bridge, after a year", clearanceHow),
  yearActionBass: own("year", "Bass action, after a year", fields["strings.actionBass"].howTo),
  yearActionTreble: own(
    "year",
    "Treble action, after a year",
    fields["strings.actionTreble"].howTo,
  ),
} as const satisfies Readonly<Record<string, MeasurementField>>;

export type MeasurementKey = keyof typeof measurementFields;

export const isMeasurementKey = (text: string): text is MeasurementKey =>
  Object.hasOwn(measurementFields, text);

/** In the order of work. */
export const measurementKeys: readonly MeasurementKey[] =
  Object.keys(measurementFields).filter(isMeasurementKey);

export const measurementField = (key: MeasurementKey): MeasurementField => measurementFields[key];

/** Of a rim with a break alone. */
const ofBreak: readonly MeasurementKey[] = [
  "breakBeforeDish",
  "tailBeforeDish",
  "breakAfterDish",
  "tailAfterDish",
  "depthBreak",
];

/** Where nothing is sanded after the dish, all side depths are checked together. */
const checkedWithDish: readonly MeasurementKey[] = ["depthUpperBout", "depthNeckEnd"];

export const measurementsAt = (step: StepId, method: DomeMethod): readonly MeasurementKey[] =>
  measurementKeys.filter((key) => {
    if (method === "break") return measurementFields[key].at === step;
    const at = checkedWithDish.includes(key) ? "check" : measurementFields[key].at;
    return at === step && !ofBreak.includes(key);
  });
