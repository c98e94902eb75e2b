import type { Point } from "./frame.ts";
import { capHeight, textWidth } from "./lettering.ts";
import type { Way } from "./placer.ts";

/** Clear paper between a line and its name, px. */
const clear = 5;
/** Where along the line its name is tried, as shares of it, the best first. */
const places = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

/** Ways to write a straight line's name along it, just over it or just under it. */
export function nameWays(
  role: string,
  text: string,
  [a, b]: readonly [Point, Point],
  size: number,
): Way[] {
  const width = textWidth(text, size);
  const slope = b[0] === a[0] ? 0 : (b[1] - a[1]) / (b[0] - a[0]);
  const lean = (Math.abs(slope) * width) / 2;
  return places.flatMap((share, i) => {
    const x = a[0] + (b[0] - a[0]) * share;
    const y = a[1] + (b[1] - a[1]) * share;
    const write = (base: number): Way => ({
      text: { kind: "text", role: `${role} name`, x, y: base, anchor: "middle", size, text },
      strokes: [],
      shelf: [],
      lane: null,
      cost: i * 0.1,
      shapes: () => [],
    });
    return [write(y - lean - clear), write(y + lean + clear + capHeight(size))];
  });
}
