import { type Point, pointAt } from "../frame.ts";
import { rectangle } from "../shapes.ts";
import { stringZ } from "./heights.ts";
import { contactPoint } from "./lines.ts";
import type { SectionLayout } from "./section-layout.ts";

/** Where the break, the shim and the saddle can be taken hold of, px; turned over there is no saddle. */
export interface Handles {
  readonly break: Point;
  readonly shim: Point;
  readonly saddle: Point | null;
}

export function handlesOf(layout: SectionLayout): Handles {
  const { frame, setting } = layout;
  const { breakX, saddleX } = setting;
  return {
    break: pointAt(frame, breakX, 0),
    shim: contactPoint(layout),
    saddle: frame.turned ? null : pointAt(frame, saddleX, stringZ(setting, saddleX)),
  };
}

/** px a handle's mark reaches to each side, along the way it moves and across it. */
const reach = { along: 16, across: 8 };

/** Outlines of the marks a view may put on the handles, for the lettering to keep off. */
export function handleBoxes(layout: SectionLayout): readonly (readonly Point[])[] {
  const handles = handlesOf(layout);
  const upright = handles.saddle === null ? [handles.shim] : [handles.shim, handles.saddle];
  return [
    around(handles.break, reach.along, reach.across),
    ...upright.map((point) => around(point, reach.across, reach.along)),
  ];
}

const around = ([x, y]: Point, dx: number, dy: number): readonly Point[] =>
  rectangle([x - dx, y - dy], [x + dx, y + dy]);
