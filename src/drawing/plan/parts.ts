import type { Instrument } from "../../instrument/instrument.ts";
import { contactOf } from "../../profile/givens.ts";
import { saddlePlaceX } from "../../profile/strings.ts";
import { circleShape } from "../circle-shape.ts";
import { type Point, pointAt } from "../frame.ts";
import type { LineStyle, PathShape } from "../scene.ts";
import { lineShape } from "../shapes.ts";
import type { PlanLayout } from "./rim-plan-layout.ts";

/** A line across the plan, with what it is called. */
export interface CrossLine {
  readonly role: string;
  readonly text: string;
  readonly x: number;
  /** How far it runs over and under the centreline as drawn, mm. */
  readonly over: number;
  readonly under: number;
  /** How much nearer the neck it stands for each mm over the centreline; 0 where it stands square. */
  readonly lean: number;
  readonly line: LineStyle;
}

/** px the centreline runs past the ends, and mm the saddle line past its strings. */
const past = 12;
const pastStrings = 12;

export function crossLines({ givens, drawn }: PlanLayout): readonly CrossLine[] {
  const { breakX, saddleX, instrument, seat } = givens;
  const contact = contactOf(instrument);
  const across = (x: number, most = Number.POSITIVE_INFINITY) => {
    const [over, under] = drawn.map(({ half }) => Math.min(most, half.outline.halfWidth(x)));
    return { x, over: over ?? 0, under: under ?? 0, lean: 0 };
  };
  const saddleLine: CrossLine = {
    role: "saddle line",
    text: "saddle line",
    ...across(saddleX, instrument.strings.spreadSaddle / 2 + pastStrings),
    lean: saddleLean(instrument) * (instrument.body.leftHanded === true ? -1 : 1),
    line: "thick",
  };
  if (seat !== null) {
    const end = across(seat.fromX, instrument.seat.fingerboardWidth / 2);
    return [{ role: "seat's end", text: "seat's end", ...end, line: "thick" }, saddleLine];
  }
  return [
    { role: "break", text: "break", ...across(breakX), line: "thick" },
    saddleLine,
    { role: "shim contact", text: "stick's inner edge", ...across(contact), line: "dashed" },
  ];
}

export const crossPoints = (
  { frame }: PlanLayout,
  { x, over, under, lean }: CrossLine,
): readonly Point[] => [
  pointAt(frame, x + lean * over, over),
  pointAt(frame, x - lean * under, -under),
];

/** How much nearer the neck the saddle stands for each mm toward the bass side. */
function saddleLean(instrument: Instrument): number {
  const { spreadSaddle } = instrument.strings;
  if (spreadSaddle === 0) return 0;
  return (saddlePlaceX(instrument, 0) - saddlePlaceX(instrument, 1)) / spreadSaddle;
}

export function partShapes(layout: PlanLayout): readonly PathShape[] {
  const { soundholeAt, soundholeDiameter } = layout.givens.instrument.body;
  const hole = pointAt(layout.frame, soundholeAt, 0);
  const radius = (soundholeDiameter / 2) * layout.frame.along;
  return [
    lineShape("centreline", "chain", centrePoints(layout)),
    ...(radius > 0 ? [circleShape("soundhole", "thin", null, hole, radius)] : []),
    ...seatSides(layout),
    ...crossLines(layout).map((cross) =>
      lineShape(cross.role, cross.line, crossPoints(layout, cross)),
    ),
  ];
}

/** The long sides of the fingerboard's seat, where it is sanded on the top. */
function seatSides({ frame, drawn, givens: { seat, outline, instrument } }: PlanLayout) {
  if (seat === null) return [];
  const half = instrument.seat.fingerboardWidth / 2;
  return drawn.map(({ way, half: { outline: side } }) =>
    lineShape(
      "seat",
      "thin",
      [seat.fromX, outline.length].map((x) =>
        pointAt(frame, x, way * Math.min(half, side.halfWidth(x))),
      ),
    ),
  );
}

export function centrePoints({ frame, givens }: PlanLayout): readonly [Point, Point] {
  const [tail, neck] = [pointAt(frame, 0, 0), pointAt(frame, givens.outline.length, 0)];
  return [
    [tail[0] - past, tail[1]],
    [neck[0] + past, neck[1]],
  ];
}

/** Points round the soundhole, for the lettering to keep off. */
export function soundholePoints({ frame, givens }: PlanLayout): readonly Point[] {
  const { soundholeAt, soundholeDiameter } = givens.instrument.body;
  if (soundholeDiameter === 0) return [];
  const radius = soundholeDiameter / 2;
  const steps = 60;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const turn = (2 * Math.PI * i) / steps;
    return pointAt(frame, soundholeAt + radius * Math.cos(turn), radius * Math.sin(turn));
  });
}
