import { mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { contactOf } from "../givens.ts";
import type { BreakProfile, Profile } from "../outcome.ts";
import { leastShown } from "../standing.ts";
import { tailExtraExplained } from "./tail-extra.ts";
import { dust, offAt, type StepWriter, sandedLast } from "./work-step.ts";

/* The steps of a rim that is domed to a break and sanded flat from there. */

const mark: StepWriter<BreakProfile> = ({ dome }, { breakX, breakHalfWidth }) => ({
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

const dish: StepWriter<BreakProfile> = (instrument, plan) => ({
  instructions: [
    instrument.dome.dishRadius === null
      ? ["No dome: sand the tail part flat from the break to the tail."]
      : phrase`Sand the tail part in the dish of radius ${mm(instrument.dome.dishRadius)} up to the break marks.`,
    ...tailExtraExplained(instrument, plan),
    removalSaid(plan),
    ...sandedLast(plan),
    ...wholeRimSaid(plan),
  ],
  measure: [
    "Pencil the edge all round and sand until the last of it is gone up to the marks. Side depth before and after, at the tail and at the break, tells how much more came off at the tail.",
  ],
  mistake: ["Pulling the rim over the dish's edge, or wearing one place of the dish."],
  sign: ["Linings chip where they ride over the edge; a groove shows at the dish's rim."],
  caution: dust,
});

const removalSaid = (plan: Profile): Phrase =>
  phrase`Off the level edge come ${mm(offAt(plan, "tail"))} at the tail, ${mm(offAt(plan, "waist"))} at the waist, ${mm(offAt(plan, "break"))} at the break.`;

/** Whether it does harm to dish the whole rim before the flat is sanded, as some do. */
function wholeRimSaid({ dishUndercut, dishUndercutX }: BreakProfile): readonly Phrase[] {
  if (dishUndercut === null) return [];
  return dishUndercutX === null
    ? [
        [
          "Dishing the whole rim first does no harm here: the flat takes off all that the dish leaves neckward of the break.",
        ],
      ]
    : [
        phrase`Keep the dish tailward of the break: on the whole rim it would cut ${mm(dishUndercut)} under the flat, deepest ${mm(dishUndercutX)} from the tail, and the flat would have to go down with it.`,
      ];
}

const shim: StepWriter<BreakProfile> = (instrument, plan) => ({
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

const flat: StepWriter<BreakProfile> = ({ dome }, { pitch, stations, rimOffset }) => ({
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

const overrun: StepWriter<BreakProfile> = (_, plan) => ({
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

const offer: StepWriter<BreakProfile> = ({ dome }, { saddleX }) => ({
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

const gap: StepWriter<BreakProfile> = () => ({
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

export const breakSteps = { mark, dish, shim, flat, overrun, offer, gap } as const;
