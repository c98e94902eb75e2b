import { curvatureOf, sagitta } from "../geometry/circle.ts";
import { type Place, polylineAlong } from "../geometry/polyline.ts";
import { archOf } from "../profile/brace.ts";
import { cutShape, label, markLine, strayLimit, type Template } from "./template.ts";

/** Height of the template's board under the ends of the arc, mm. */
const board = 25;

export interface BraceShape {
  readonly length: number;
  /** Null is a straight brace. */
  readonly radius: number | null;
}

/** The arched edge of a brace: x from its middle, y over the straight line between its ends. */
export function braceArc({ length, radius }: BraceShape, stray = strayLimit): Place[] {
  const half = length / 2;
  const arch = archOf(length, radius);
  const place = (x: number): Place => [x, arch - sagitta(curvatureOf(radius), x)];
  return polylineAlong(place, -half, half, stray);
}

/** A board with the brace's arc for its upper edge, to draw round or to check the brace against. */
export function braceTemplate(
  shape: BraceShape,
  name: string,
  words: { readonly length: (mm: number) => string },
): Template {
  const half = shape.length / 2;
  const arch = archOf(shape.length, shape.radius);
  const curve = shape.radius === null ? "straight" : `radius ${words.length(shape.radius)}`;
  return {
    name,
    lines: [
      cutShape("brace arc", [...braceArc(shape), [half, -board], [-half, -board]]),
      markLine("middle", [
        [0, arch],
        [0, -board],
      ]),
      markLine("line between the ends", [
        [-half, 0],
        [half, 0],
      ]),
    ],
    labels: [
      label([2, -8], `${name}: ${words.length(shape.length)} long, ${curve}`, { anchor: "start" }),
      label([2, -16], `rise ${words.length(arch)} in the middle`, { anchor: "start" }),
    ],
  };
}
