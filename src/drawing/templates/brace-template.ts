import { curvatureOf, sagitta } from "../../geometry/circle.ts";
import { type Place, polylineAlong } from "../../geometry/polyline.ts";
import { archOf } from "../../profile/brace.ts";
import type { BraceShape } from "../side/brace.ts";
import { cutShape, label, markLine, strayLimit, type Template } from "./template.ts";

/** Height of a template's board under the ends of the arc, and clear of the next board, mm. */
const board = 25;
const apart = 8;

export interface BraceWords {
  readonly length: (mm: number) => string;
  readonly radius: (mm: number) => string;
}

/** The arched edge of a brace: x from its middle, y over the straight line between its ends. */
export function braceArc({ length, radius }: BraceShape, stray = strayLimit): Place[] {
  const half = length / 2;
  const arch = archOf(length, radius);
  const place = (x: number): Place => [x, arch - sagitta(curvatureOf(radius), x)];
  return polylineAlong(place, -half, half, stray);
}

/**
 * Boards with the braces' arcs for their upper edges, to draw round or to check a brace against, one
 * under the other and each in its own place.
 */
export function bracesTemplate(
  shapes: readonly BraceShape[],
  name: string,
  words: BraceWords,
): Template {
  let under = 0;
  const boards = shapes.map((shape, i) => {
    const base = under - (i === 0 ? 0 : apart + archOf(shape.length, shape.radius));
    under = base - board;
    return boardOf(shape, shapes.length === 1 ? name : `${name} ${i + 1}`, words, base);
  });
  return {
    name: shapes.length === 1 ? name : `${name}s`,
    lines: boards.flatMap(({ lines }) => lines),
    labels: boards.flatMap(({ labels }) => labels),
  };
}

/** One board; `base` is the height of the line between its arc's ends. */
function boardOf(
  shape: BraceShape,
  name: string,
  words: BraceWords,
  base: number,
): Pick<Template, "lines" | "labels"> {
  const half = shape.length / 2;
  const arch = archOf(shape.length, shape.radius);
  const curve = shape.radius === null ? "straight" : `radius ${words.radius(shape.radius)}`;
  const arc = braceArc(shape).map(([x, y]): Place => [x, base + y]);
  return {
    lines: [
      cutShape("brace arc", [...arc, [half, base - board], [-half, base - board]]),
      markLine("middle", [
        [0, base + arch],
        [0, base - board],
      ]),
      markLine("line between the ends", [
        [-half, base],
        [half, base],
      ]),
    ],
    labels: [
      label([2, base - 8], `${name}: ${words.length(shape.length)} long, ${curve}`, {
        anchor: "start",
      }),
      label([2, base - 16], `rise ${words.length(arch)} at the middle`, { anchor: "start" }),
    ],
  };
}
