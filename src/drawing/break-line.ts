import type { Point } from "./frame.ts";
import { lineShape } from "./path.ts";
import type { PathShape } from "./scene.ts";

/** px: half height and half width of a zigzag, the space between two, and how far the line runs past what it cuts. */
const rise = 5;
const half = 3;
const every = 130;
const past = 7;

/** The thin straight line with zigzags that ends a part not drawn further (ISO 128, from memory). Level or upright, from a to b. */
export function breakLine(role: string, [ax, ay]: Point, [bx, by]: Point): PathShape {
  const length = Math.hypot(bx - ax, by - ay);
  const ux = length > 0 ? (bx - ax) / length : 1;
  const uy = length > 0 ? (by - ay) / length : 0;
  const place = (along: number, across: number): Point => [
    ax + ux * along - uy * across,
    ay + uy * along + ux * across,
  ];
  const count = Math.max(1, Math.round(length / every));
  const zigzags = Array.from({ length: count }, (_, i) => ((i + 0.5) * length) / count);
  return lineShape(role, "thin", [
    place(-past, 0),
    ...zigzags.flatMap((at) => [
      place(at - half, 0),
      place(at - half / 2, -rise),
      place(at + half / 2, rise),
      place(at + half, 0),
    ]),
    place(length + past, 0),
  ]);
}
