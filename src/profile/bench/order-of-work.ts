import { type StepId, stepIds } from "../../instrument/as-built/steps.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { count, mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { contactOf } from "../givens.ts";
import type { Profile } from "../outcome.ts";
import { leastShown } from "../standing.ts";
import { tailExtraExplained } from "./tail-extra.ts";

/** One step of the work on one instrument. The figures to be measured stand beside it: `expectedOf`. */
export interface WorkStep {
  readonly id: StepId;
  readonly instructions: readonly Phrase[];
  readonly measure: Phrase;
  /** The usual mistake, and how it shows. */
  readonly mistake: Phrase;
  readonly sign: Phrase;
  readonly caution: Phrase | null;
}

type StepText = Omit<WorkStep, "id">;
type StepWriter = (instrument: Instrument, plan: Profile) => StepText;

/** The order of work for one instrument. `plan` is its profile, corrections taken included. */
export const orderOfWork = (instrument: Instrument, plan: Profile): readonly WorkStep[] =>
  stepIds.map((id) => ({ id, ...writers[id](instrument, plan) }));

const dust: Phrase = [
  "Wood dust: extraction at the source and a fitted mask. Hands and sleeves clear of a dish under power.",
];
const edges: Phrase = [
  "Fresh edges cut and splinter: take the corners off before you lift the rim.",
];

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

const mark: StepWriter = ({ dome }, { breakX, breakHalfWidth }) => ({
  instructions: [
    phrase`Mark the break on both sides: ${mm(dome.flatLength)} from the neck end along the centreline, ${mm(breakX)} from the tail.`,
    phrase`The rim is ${mm(2 * breakHalfWidth)} across there. Carry the marks over the linings and down both faces of the sides.`,
  ],
  measure: ["Both distances, on both sides, square to the centreline."],
  mistake: ["Marking along the side instead of along the centreline."],
  sign: [
    "The two distances do not add up to the body's length, or a line across the marks is not square.",
  ],
  caution: null,
});

const dish: StepWriter = (instrument, plan) => ({
  instructions: [
    instrument.dome.dishRadius === null
      ? ["No dome: sand the tail part flat from the break to the tail."]
      : phrase`Sand the tail part in the dish of radius ${mm(instrument.dome.dishRadius)} up to the break marks.`,
    ...tailExtraExplained(instrument, plan),
    removalSaid(plan),
    phrase`It is sanded last ${mm(plan.leastRemovalX)} from the tail: look there for untouched edge before you stop.`,
    ...(plan.rimOffset > leastShown
      ? [phrase`The whole edge comes down ${mm(plan.rimOffset)}, because it was too low there.`]
      : []),
  ],
  measure: [
    "Pencil the edge all round and sand until the last of it is gone up to the marks. Side depth before and after, at the tail and at the break, tells how much more came off at the tail.",
  ],
  mistake: ["Pulling the rim over the dish's edge, or wearing one place of the dish."],
  sign: ["Linings chip where they ride over the edge; a groove shows at the dish's rim."],
  caution: dust,
});

function removalSaid({ stations, rimOffset }: Profile): Phrase {
  const off = (name: string): number =>
    rimOffset + (stations.find((station) => station.name === name)?.removal ?? 0);
  return phrase`Off the level edge come ${mm(off("tail"))} at the tail, ${mm(off("waist"))} at the waist, ${mm(off("break"))} at the break.`;
}

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

const shim: StepWriter = (instrument, plan) => ({
  instructions: [
    phrase`Lay the rim top down on the flat board and a shim ${mm(plan.shim)} thick under the tail block.`,
    phrase`Its neckward edge, the one the rim rests on, lies ${mm(contactOf(instrument))} in from the tail end.`,
    [
      "Sand with strokes from side to side, or tape the shim to the tail block with no paper under it: either keeps the contact where it is.",
    ],
  ],
  measure: ["Shim with calipers; contact with a rule from the tail end."],
  mistake: ["The shim creeps out toward the tail while you sand, or is pressed thinner."],
  sign: ["The contact's mark on the block wanders: the pitch comes out too small."],
  caution: null,
});

const flat: StepWriter = ({ dome }, { pitch, stations, rimOffset }) => ({
  instructions: [
    phrase`Sand on the board, rim resting on shim and neck end, until the flat just reaches the break marks, ${mm(dome.flatLength)} from the neck end.`,
    phrase`At the neck end ${mm(rimOffset + neckRemoval(stations))} comes off the level edge.`,
    ["Stop a pencil line short and finish with a few strokes, checking both sides."],
  ],
  measure: [
    "From the neck end to where the sanded flat ends, along the centreline, on both sides.",
  ],
  mistake: ["Sanding past the mark."],
  sign: [
    pitch > 0
      ? "The flat runs past the marks on both sides: the flat is longer and the break is lower than planned."
      : "The flat runs past the marks on both sides.",
  ],
  caution: dust,
});

const neckRemoval = (stations: Profile["stations"]): number => stations.at(-1)?.removal ?? 0;

const overrun: StepWriter = (_, plan) => ({
  instructions: [
    plan.overrunLength === 0
      ? ["The board should not touch the domed edge tailward of the break. See that it has not."]
      : plan.overrunDepth < leastShown
        ? [
            "The board brushes the domed edge past the break, too thin to measure: a few light strokes in the dish take it off.",
          ]
        : phrase`The board cuts past the break, ${mm(plan.overrunLength)} far and ${mm(plan.overrunDepth)} deep. Feather it in the dish with light strokes.`,
    [
      "This is what the board takes off the dome while the flat ends at its mark. A flat sanded past the mark is another thing: enter where it ends at the step before, and see Corrections.",
    ],
  ],
  measure: ["From the break to where the board's scratches end on the domed edge."],
  mistake: ["Feathering with the rim tipped toward the neck."],
  sign: [
    "A crease across the linings at the break, or light under a short straightedge on the flat.",
  ],
  caution: dust,
});

const offer: StepWriter = ({ dome }, { saddleX }) => ({
  instructions: [
    ["Lay the braced top on the rim, hold it down with hand pressure at break and tail."],
    phrase`Lay a straightedge on the flat along the centreline and look under it at the saddle line, ${mm(saddleX)} from the tail.`,
    ...(dome.braceRadius === dome.dishRadius
      ? []
      : [["The braces are arched to another radius than the dish: the figure counts that in."]]),
  ],
  measure: ["The gap under the straightedge at the saddle line, with feelers or a wedge gauge."],
  mistake: ["Laying the straightedge so that it bridges the blend and not the flat."],
  sign: ["It rocks on the break, or the gap changes when you press at the neck end."],
  caution: null,
});

const gap: StepWriter = () => ({
  instructions: [
    ["Glue the top, let it come to rest for a day, and lay the straightedge on the flat again."],
    [
      "This is the last thing the rim says: from here on only neck, bridge and saddle can put it right.",
    ],
  ],
  measure: ["The gap at the saddle line, as before the glue."],
  mistake: ["Measuring before the wood has given its moisture back."],
  sign: ["The gap is another one the next morning."],
  caution: ["Clamps and go-bars hold a load and let go without warning: stand aside of them."],
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
    phrase`Make the saddle to stand ${mm(saddleExposure)} over the bridge in the middle, and a little over, to be taken down to the action.`,
    phrase`What comes off at the saddle lowers the action at fret 12 by half: ${mm(strings.actionBass)} bass and ${mm(strings.actionTreble)} treble are wanted.`,
  ],
  measure: ["Saddle out of the slot: its height over the bridge's top, in the middle."],
  mistake: [
    "Taking off at once what the action is too high by: twice as much is needed, and it cannot be put back.",
  ],
  sign: ["The saddle leans in its slot, or a string buzzes on the first frets."],
  caution: null,
});

const strings: StepWriter = (_, { stringHeight }) => ({
  instructions: [
    ["String up, tune to pitch, and let it stand an hour."],
    phrase`The strings should run ${mm(stringHeight)} over the top at the saddle.`,
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

const writers: Readonly<Record<StepId, StepWriter>> = {
  level,
  mark,
  dish,
  check,
  shim,
  flat,
  overrun,
  offer,
  gap,
  fingerboard,
  bridge,
  saddle,
  strings,
  week: settling("after a week"),
  year: settling("after a year"),
};
