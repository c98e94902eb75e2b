import { symbol } from "d3-shape";
import type { Point } from "./frame.ts";
import type { FillStyle, LineStyle, PathShape } from "./scene.ts";

/** A full circle, filled where a fill is given. */
export function circleShape(
  role: string,
  line: LineStyle,
  fill: FillStyle | null,
  [x, y]: Point,
  radius: number,
): PathShape {
  const circle = symbol({
    draw: (path) => {
      path.moveTo(x + radius, y);
      path.arc(x, y, radius, 0, 2 * Math.PI);
    },
  });
  const d = circle.digits(2)() ?? "";
  return { kind: "path", role, line, ...(fill === null ? {} : { fill }), d };
}
