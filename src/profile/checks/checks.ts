import type { Instrument } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import {
  count,
  deg,
  mm,
  type Phrase,
  phrase,
  roundedDown,
  roundedUp,
} from "../../instrument/phrase.ts";
import type { AnyOutcomes, Check, Grade } from "../outcome.ts";
import { leastShown, rounding, standing } from "../standing.ts";
import { deeperAtNeck, neckDepthUnlikely, tailDepthUnlikely } from "./depth-checks.ts";
import { plateLeft, seatTooWide } from "./seat-checks.ts";
import { windowChecks } from "./window-checks.ts";

type Test = (instrument: Instrument, outcomes: AnyOutcomes) => Check | null;

// Numbers in a fix are limits: shown rounded so that the figure read off the page clears the check.
const atLeast = (value: number) => roundedUp(mm(value));
const atMost = (value: number) => roundedDown(mm(value));

const worst: Readonly<Record<Grade, number>> = { stop: 0, warn: 1, note: 2 };

/** What a builder should know of a plan before sanding, worst first. */
export function checksOf(instrument: Instrument, outcomes: AnyOutcomes): readonly Check[] {
  return [...tests.map((test) => test(instrument, outcomes)), ...windowChecks(instrument, outcomes)]
    .filter((check) => check !== null)
    .sort((a, b) => worst[a.grade] - worst[b.grade]);
}

const saddleBuried: Test = ({ dome }, { stringExposure, saddleExposure }) => {
  const least = Math.min(saddleExposure, ...stringExposure);
  if (least >= -rounding) return null;
  return {
    id: "saddle-buried",
    grade: "stop",
    field: "target.value",
    means: phrase`A string runs ${mm(-least)} below the top of the bridge: no saddle can bring it to its action.`,
    fix: [
      "A thicker fingerboard or a thinner bridge, by ",
      atLeast(-least),
      ` and the saddle you want to see, or a thicker ${anglePart[dome.method]}.`,
    ],
  };
};

const fingerboardPastFlat: Test = (instrument, { fingerboardEndX, breakX }) => {
  const past = breakX === null ? 0 : breakX - fingerboardEndX;
  if (past <= rounding) return null;
  return {
    id: "fingerboard-past-flat",
    grade: "stop",
    field: "dome.flatLength",
    means: phrase`The fingerboard ends ${mm(past)} past the flat: its tongue would hang over, or be pulled down onto, the dome.`,
    fix: phrase`A flat of ${atLeast(instrument.dome.flatLength + past)} or more, fewer frets, or less fingerboard beyond the last one.`,
  };
};

const lastFretBeforeJoin: Test = ({ neck }) => {
  if (neck.lastFret >= neck.joinFret) return null;
  return {
    id: "last-fret-before-join",
    grade: "warn",
    field: "neck.lastFret",
    means: phrase`The last fret, ${count(neck.lastFret)}, comes before the join at fret ${count(neck.joinFret)}: nothing of the fingerboard lies on the body.`,
    fix: phrase`A last fret of ${count(neck.joinFret)} or higher.`,
  };
};

const soundholeUnderFingerboard: Test = ({ body }, { fingerboardEndX }) => {
  const edge = body.soundholeAt + body.soundholeDiameter / 2;
  const over = edge - fingerboardEndX;
  if (over <= rounding) return null;
  const centred = body.soundholeAt - over;
  return {
    id: "soundhole-under-fingerboard",
    grade: "warn",
    field: "body.soundholeAt",
    means: phrase`The fingerboard ends ${mm(over)} over the soundhole.`,
    fix:
      centred < 0
        ? phrase`A smaller soundhole, or a shorter fingerboard.`
        : phrase`A soundhole centred ${atMost(centred)} from the tail or nearer, a smaller one, or a shorter fingerboard.`,
  };
};

const breakInSoundhole: Test = ({ body, dome }, { breakX }) => {
  if (breakX === null) return null;
  const edge = body.soundholeAt + body.soundholeDiameter / 2;
  const inside = edge - breakX;
  if (inside <= rounding || inside >= body.soundholeDiameter - rounding) return null;
  const clear = dome.flatLength - inside;
  return {
    id: "break-in-soundhole",
    grade: "note",
    field: "dome.flatLength",
    means: phrase`The break crosses the soundhole ${mm(inside)} from its neck-side edge: the top bends through the hole and its rosette.`,
    fix:
      clear < 0
        ? phrase`Keep the bend gentle there and check the rosette with a straightedge.`
        : phrase`A flat of ${atMost(clear)} would break at the hole's edge; or keep the bend gentle there and check the rosette with a straightedge.`,
  };
};

const soundholeOnFlat: Test = ({ body, dome }, { breakX }) => {
  if (breakX === null) return null;
  const clear = body.soundholeAt - body.soundholeDiameter / 2 - breakX;
  if (clear <= rounding) return null;
  return {
    id: "soundhole-on-flat",
    grade: "note",
    field: "dome.flatLength",
    means: phrase`The whole soundhole lies on the flat, ${mm(clear)} clear of the break: more of the top is flat than usual.`,
    fix: phrase`A flat of ${atMost(dome.flatLength - clear)} or less brings the break to the hole.`,
  };
};

const overrun: Test = (_, { overrunLength, overrunDepth, cleanShim }) => {
  if (overrunLength === 0) return null;
  const shallow = overrunDepth < leastShown;
  const feather = phrase`Feather it in the dish`;
  return {
    id: "flat-overrun",
    grade: shallow ? "note" : "warn",
    field: "target.value",
    means: shallow
      ? phrase`The flat brushes the domed rim ${mm(overrunLength)} past the break, too shallow to measure.`
      : phrase`The flat runs ${mm(overrunLength)} past the break, ${mm(overrunDepth)} deep: the board cuts into the domed rim there.`,
    fix:
      cleanShim === null
        ? [...feather, "."]
        : [...feather, ", or use a shim of ", atLeast(cleanShim), " or more."],
  };
};

const saddleInBlend: Test = ({ dome }, { saddleX, breakX }) => {
  if (breakX === null) return null;
  // From the saddle line to a bridge's neckward edge; common practice, no source.
  const bridgeAhead = 11;
  const into = saddleX + bridgeAhead - (breakX - dome.blendLength);
  if (into <= rounding) return null;
  const what = into > bridgeAhead ? "The saddle" : "The bridge's pad";
  return {
    id: "bridge-in-blend",
    grade: "warn",
    field: "dome.blendLength",
    means: [
      what,
      ...phrase` lies ${mm(into > bridgeAhead ? into - bridgeAhead : into)} inside the blend, where the top is neither flat nor dome: the heights here do not hold.`,
    ],
    fix: clearOfBlend(dome, into),
  };
};

/** What may be shortened by so much, and where neither may, where else room is found. */
function clearOfBlend({ blendLength, flatLength }: Instrument["dome"], into: number): Phrase {
  const [blend, flat] = [blendLength >= into, flatLength >= into];
  const by = atLeast(into);
  if (blend && flat) return phrase`A blend ${by} shorter, or a flat ${by} shorter.`;
  if (blend) return phrase`A blend ${by} shorter.`;
  if (flat) return phrase`A flat ${by} shorter.`;
  return phrase`A saddle ${by} nearer the tail: a longer scale, or a join at a lower fret.`;
}

const contactPastBlock: Test = ({ shim, dome }) => {
  if (dome.method === "seat") return null;
  const past = shim.contact - shim.tailBlockDepth;
  if (past <= rounding) return null;
  return {
    id: "contact-past-block",
    grade: "note",
    field: "shim.contact",
    means: phrase`The shim reaches ${mm(past)} past the tail block, so the rim rests on the block's edge: all is worked out with a contact of ${mm(shim.tailBlockDepth)}.`,
    fix: phrase`A contact of ${atMost(shim.tailBlockDepth)} or less.`,
  };
};

const dishTooSmall: Test = ({ dome }, { dishNeeded }) => {
  if (dome.dishRadius === null || dishNeeded <= dome.dishDiameter + rounding) return null;
  return {
    id: "dish-too-small",
    grade: "warn",
    field: "dome.dishDiameter",
    means: phrase`The domed part of the rim needs a dish ${mm(dishNeeded)} across, and this one is ${mm(dome.dishDiameter)}: its edge would wear a groove and chip the linings.`,
    fix: phrase`A dish ${atLeast(dishNeeded)} across or more.`,
  };
};

const straightedgeCannotLie: Test = (_, { flatGap }) => {
  if (flatGap >= -rounding) return null;
  return {
    id: "straightedge-cannot-lie",
    grade: "note",
    field: "target.value",
    means: phrase`The top stands ${mm(-flatGap)} over the flat's plane at the saddle line: a straightedge cannot lie on the flat there.`,
    fix: phrase`Measure down from a straightedge on blocks of known height instead, or use a thicker shim.`,
  };
};

// Common practice for a domed top, no source.
const usualPitch = [1, 2] as const;

const pitchUnusual: Test = ({ dome }, { pitch }) => {
  const [low, high] = usualPitch;
  if (dome.dishRadius === null || standing(pitch, usualPitch) !== "outside") return null;
  return {
    id: "pitch-unusual",
    grade: "note",
    field: "target.value",
    means: phrase`A pitch of ${deg(pitch)} is outside common practice, ${deg(low)} to ${deg(high)}: neck block and heel must be cut to suit.`,
    fix: [
      pitch < low ? "A thicker " : "A thinner ",
      anglePart[dome.method],
      ", if bridge and saddle allow it.",
    ],
  };
};

const tests: readonly Test[] = [
  saddleBuried,
  plateLeft,
  fingerboardPastFlat,
  lastFretBeforeJoin,
  overrun,
  saddleInBlend,
  contactPastBlock,
  dishTooSmall,
  seatTooWide,
  soundholeUnderFingerboard,
  straightedgeCannotLie,
  breakInSoundhole,
  soundholeOnFlat,
  tailDepthUnlikely,
  neckDepthUnlikely,
  deeperAtNeck,
  pitchUnusual,
];
