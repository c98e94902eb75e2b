import { type StepId, stepsOf } from "../../instrument/as-built/steps.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { count, mm, phrase } from "../../instrument/phrase.ts";
import type { BreakProfile, Profile, SeatProfile } from "../outcome.ts";
import { breakSteps } from "./break-steps.ts";
import { seatSteps } from "./seat-steps.ts";
import { dust, edges, type StepWriter, type WorkStep } from "./work-step.ts";

/** The order of work for one instrument, by its method. `plan` is its profile, corrections taken included. */
export function orderOfWork(instrument: Instrument, plan: Profile): readonly WorkStep[] {
  const steps = stepsOf(plan.seat === null ? "break" : "seat");
  return steps.flatMap((id) => {
    const written = own(id, instrument, plan) ?? common[id]?.(instrument, plan);
    return written === undefined ? [] : [{ id, ...written }];
  });
}

/** A step as one method has it; undefined where both have the same. */
function own(id: StepId, instrument: Instrument, plan: Profile) {
  const ofBreak: Writers<BreakProfile> = breakSteps;
  const ofSeat: Writers<SeatProfile> = seatSteps;
  return plan.seat === null ? ofBreak[id]?.(instrument, plan) : ofSeat[id]?.(instrument, plan);
}

type Writers<P> = Readonly<Partial<Record<StepId, StepWriter<P>>>>;

const level: StepWriter = (_, { stockWidth }) => ({
  instructions: [
    [
      "Lay the rim in its mould, top edge up, and sand the edge on a flat board until it is level all round.",
    ],
    phrase`The sides must have been cut at least ${mm(stockWidth)} wide.`,
  ],
  measure: ["Chalk the edge: one light pass on the board takes the chalk off everywhere."],
  mistake: ["Sanding on a board that sags or a mould that is sprung."],
  sign: ["The rim rocks on a second flat surface, corner to corner."],
  caution: dust,
});

const check: StepWriter = (_, { dishNeeded }) => ({
  instructions: [
    [
      "Turn the rim in the dish by hand a quarter turn each way: it lies close everywhere, wherever it is set down.",
    ],
    phrase`A dish ${mm(dishNeeded)} across takes the whole domed part at once.`,
  ],
  measure: [
    "Feeler or light under the edge in the dish; side depths at the marks, if the back edge is finished.",
  ],
  mistake: [
    "Taking a bright line of light for contact: linings stand proud of the sides, or the sides of them.",
  ],
  sign: ["The rim rocks in the dish, or a station is deeper on one side than on the other."],
  caution: edges,
});

const fingerboard: StepWriter = ({ neck }, { heelAngle }) => ({
  instructions: [
    phrase`Fingerboard ${mm(neck.fingerboardThickness)} thick at the centre, frets ${mm(neck.fretHeight)} high.`,
    ["Before it is glued, correct what the outlook shows: see Corrections."],
    [...phrase`The heel face stands at ${{ value: heelAngle, as: "angle" }} to the fingerboard.`],
  ],
  measure: ["Thickness over the centre at the body's neck end; a fret's crown over the board."],
  mistake: ["Planing the board with the glue's swelling still in it."],
  sign: ["A hump at the body join under a straightedge along the frets."],
  caution: edges,
});

const bridge: StepWriter = ({ bridge: { thickness } }, { saddleX, bridgeClearance }) => ({
  instructions: [
    phrase`Bridge ${mm(thickness)} thick at the saddle line, which lies ${mm(saddleX)} from the tail.`,
    phrase`With the frets in, a straightedge along them should pass ${mm(bridgeClearance)} over the bridge's top.`,
  ],
  measure: ["Bridge with calipers at the saddle line; the straightedge's height over its top."],
  mistake: ["A bridge sanded to another curve than the top."],
  sign: ["Light under its wings, and a top pulled flat after clamping."],
  caution: [
    "A clamped bridge holds a load on a thin top: caul inside, and never more than closes the joint.",
  ],
});

const saddle: StepWriter = ({ strings }, { saddleExposure }) => ({
  instructions: [
    phrase`Make the saddle to stand ${mm(saddleExposure)} over the bridge in the middle, and a little over, to be taken down to the action. The Saddle template has every string's own height.`,
    phrase`What comes off at the saddle lowers the action at fret 12 by half: ${mm(strings.actionBass)} bass and ${mm(strings.actionTreble)} treble are wanted.`,
  ],
  measure: ["Saddle out of the slot: its height over the bridge's top, in the middle."],
  mistake: [
    "Taking off at once what the action is too high by: twice as much is needed, and it cannot be put back.",
  ],
  sign: ["The saddle leans in its slot, or a string buzzes on the first frets."],
  caution: null,
});

const strings: StepWriter = ({ strings: { settling } }, { stringHeight }) => ({
  instructions: [
    ["String up, tune to pitch, and let it stand an hour."],
    settling === 0
      ? phrase`The strings should run ${mm(stringHeight)} over the top at the saddle.`
      : phrase`Once settled the strings should run ${mm(stringHeight)} over the top at the saddle; before that the fret plane stands ${mm(settling)} higher there.`,
  ],
  measure: ["At pitch: saddle, strings over the top, action at fret 12 on both sides, relief."],
  mistake: ["Measuring at another pitch or with the relief not set."],
  sign: ["The figures change when you tune again."],
  caution: ["A string can break and a joint let go: keep your eyes away and wear glasses."],
});

const settling =
  (when: string): StepWriter =>
  ({ neck }) => ({
    instructions: [
      [`Measure again ${when}, tuned to pitch and in the room where it was measured first.`],
      [
        "The geometry expects no change. What has changed is what this top does under load: it is learnt from.",
      ],
    ],
    measure: phrase`The relief first, then a straightedge along the frets: it rests on frets ${count(1)} and ${count(neck.lastFret)}, so relief lowers it at the saddle. Without the relief nothing is expected of it, and nothing learnt. Then the action on both sides.`,
    mistake: ["Measuring in another season's air and calling it the load."],
    sign: ["Relief and top have moved together, and move back."],
    caution: null,
  });

const common: Writers<Profile> = {
  level,
  check,
  fingerboard,
  bridge,
  saddle,
  strings,
  week: settling("after a week"),
  year: settling("after a year"),
};
