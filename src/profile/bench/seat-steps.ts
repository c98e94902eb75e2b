import { mm, phrase } from "../../instrument/phrase.ts";
import type { SeatProfile } from "../outcome.ts";
import { tailExtraExplained } from "./tail-extra.ts";
import { dust, offAt, type StepWriter, sandedLast } from "./work-step.ts";

/* The steps of a top that is domed all over, its seat sanded flat once it is on. */

const dish: StepWriter<SeatProfile> = (instrument, plan) => ({
  instructions: [
    instrument.dome.dishRadius === null
      ? ["No dome: sand the whole edge flat."]
      : phrase`Sand the whole rim in the dish of radius ${mm(instrument.dome.dishRadius)}, tail to neck end.`,
    ...tailExtraExplained(instrument, plan),
    phrase`Off the level edge come ${mm(offAt(plan, "tail"))} at the tail, ${mm(offAt(plan, "waist"))} at the waist, ${mm(offAt(plan, "neck end"))} at the neck end's corners.`,
    ...sandedLast(plan),
  ],
  measure: [
    "Pencil the edge all round and sand until the last of it is gone. Side depths before and after, at the tail and at the neck end, tell how much more came off at the tail.",
  ],
  mistake: [
    "Rocking the rim toward the neck: the whole top tips with it, and the seat cannot put it right.",
  ],
  sign: ["The neck end loses more than planned, or the rim no longer lies close in the dish."],
  caution: dust,
});

const top: StepWriter<SeatProfile> = ({ dome, seat }) => ({
  instructions: [
    dome.braceRadius === null
      ? ["Brace the top flat, every brace."]
      : phrase`Arch every brace to ${mm(dome.braceRadius)}, the upper transverse brace too, and glue the top on domed all over.`,
    phrase`Measure the plate where the fingerboard will lie before it goes on: ${mm(seat.topThickness)} is planned for.`,
    ["Let it come to rest for a day before the seat is sanded."],
  ],
  measure: ["The plate's thickness at the seat, while both faces can be reached."],
  mistake: [
    "Leaving the upper transverse brace flat under a domed plate: the seat then has a hollow under it.",
  ],
  sign: ["A straightedge across the seat rocks the other way than the dome."],
  caution: ["Clamps and go-bars hold a load and let go without warning: stand aside of them."],
});

const spacer: StepWriter<SeatProfile> = (_, { seat, saddleX }) => ({
  instructions: [
    phrase`Make a spacer ${mm(seat.spacer)} thick and lay it on the top at the saddle line, ${mm(saddleX)} from the tail.`,
    [
      "Lay a straight bar on the neck end and on the spacer: its lower face is the plane the seat is sanded to.",
    ],
  ],
  measure: ["Spacer with calipers; its place with a rule from the tail end."],
  mistake: ["A spacer off the saddle line, or one that sinks into the spruce."],
  sign: ["The bar's height over the top changes as it is slid along the seat."],
  caution: null,
});

const seat: StepWriter<SeatProfile> = (instrument, { seat: cut, fingerboardEndX }) => ({
  instructions: [
    phrase`Sand the seat until the bar lies close on it from the neck end to the fingerboard's end, ${mm(fingerboardEndX)} from the tail.`,
    phrase`In the middle ${mm(cut.endCut)} comes off at the fingerboard's end and ${mm(cut.neckEndCut)} at the neck end; at its lowest corner ${mm(instrument.seat.leastCut)}.`,
    phrase`The plate is thinned over the upper transverse brace: ${mm(cut.thicknessLeft)} of it is left where most is cut.`,
  ],
  measure: [
    "Bar and light along the seat and across it; what is left of the plate at the fingerboard's end.",
  ],
  mistake: ["Sanding past the seat's edges, where nothing covers it, or hollowing the middle."],
  sign: ["Light under the bar in the middle of the seat, or a step beside the fingerboard."],
  caution: dust,
});

const gap: StepWriter<SeatProfile> = (_, { flatGap }) => ({
  instructions: [
    phrase`Lay the straightedge on the seat along the centreline: ${mm(flatGap)} under it at the saddle line is planned.`,
    ["The seat can still be sanded anew until the fingerboard is on, as far as the plate allows."],
  ],
  measure: ["The gap at the saddle line, with feelers or a wedge gauge."],
  mistake: ["Pressing on the middle of the top while measuring."],
  sign: ["The gap is another one the next morning."],
  caution: null,
});

export const seatSteps = { dish, top, spacer, seat, gap } as const;
