import { contactOf } from "../../profile/givens.ts";
import { type Point, pointAt } from "../frame.ts";
import type { LineStyle, PathShape } from "../scene.ts";
import { circleShape, lineShape } from "../shapes.ts";
import type { PlanLayout } from "./rim-plan-layout.ts";

/** A line across the plan, with what it is called. */
export interface CrossLine {
  readonly role: string;
  readonly text: string;
  readonly x: number;
  /** Half its length, mm. */
  readonly half: number;
  readonly line: LineStyle;
}

/** px the centreline runs past the ends, and mm the saddle line past its strings. */
const past = 12;
const pastStrings = 12;

export function crossLines({ givens }: PlanLayout): readonly CrossLine[] {
  const { outline, breakX, saddleX, breakHalfWidth, saddleSpan, instrument, seat } = givens;
  const contact = contactOf(instrument);
  const saddle = Math.min(saddleSpan.half, instrument.strings.spreadSaddle / 2 + pastStrings);
  const saddleLine: CrossLine = {
    role: "saddle line",
    text: "saddle line",
    x: saddleX,
    half: saddle,
    line: "thick",
  };
  if (seat !== null) {
    const { fromX, end: corners } = seat;
    const end = { role: "seat's end", text: "seat's end", x: fromX, half: corners[0] } as const;
    return [{ ...end, line: "thick" }, saddleLine];
  }
  return [
    { role: "break", text: "break", x: breakX, half: breakHalfWidth, line: "thick" },
    saddleLine,
    {
      role: "shim contact",
      text: "stick's inner edge",
      x: contact,
      half: outline.halfWidth(contact),
      line: "dashed",
    },
  ];
}

export const crossPoints = ({ frame }: PlanLayout, { x, half }: CrossLine): readonly Point[] => [
  pointAt(frame, x, half),
  pointAt(frame, x, -half),
];

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
function seatSides({ frame, givens: { seat, outline } }: PlanLayout): readonly PathShape[] {
  if (seat === null) return [];
  return ([1, -1] as const).map((side) =>
    lineShape("seat", "thin", [
      pointAt(frame, seat.fromX, side * seat.end[0]),
      pointAt(frame, outline.length, side * seat.neckEnd[0]),
    ]),
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
