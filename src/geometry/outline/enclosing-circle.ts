import { numberAt } from "../number-at.ts";
import { type Peak, peakNear } from "../peak.ts";
import type { Edge } from "./edge.ts";
import type { Outline } from "./outline.ts";

export interface EnclosingCircle {
  readonly centreX: number;
  readonly radius: number;
}

/** Tailward or neckward of the centre. */
type Side = -1 | 1;

/** The place of the edge farthest from the centre on one side of it, with the square of its distance. */
type Farthest = (centreX: number, side: Side) => Peak;

/**
 * Smallest circle round both halves of the outline over `edge`, which begins at the tail. By symmetry
 * its centre lies on the centreline, where the farthest places tailward and neckward of it are equally
 * far. Samples of the edge bring it near, the curve between them to the last digits.
 */
export function enclosingCircle(outline: Outline, edge: Edge): EnclosingCircle {
  const length = numberAt(edge.xs, edge.xs.length - 1);
  const sampled: Farthest = (centreX, side) => {
    const i = farthestSample(edge, centreX, side);
    return {
      x: numberAt(edge.xs, i),
      value: (numberAt(edge.xs, i) - centreX) ** 2 + numberAt(edge.halfWidths, i) ** 2,
    };
  };
  const curved: Farthest = (centreX, side) =>
    placed(
      outline,
      peakNear(
        (u) => {
          const [x, y] = outline.placeAt(u);
          return (x - centreX) ** 2 + y ** 2;
        },
        edge.us,
        sampled(centreX, side).value,
        farthestSample(edge, centreX, side),
      ),
    );
  const near = balanced(sampled, length, length / 2);
  return balanced(curved, length, near.centreX);
}

/** A peak along the edge with the x it has. */
const placed = (outline: Outline, { x, value }: Peak): Peak => ({
  x: outline.placeAt(x)[0],
  value,
});

/**
 * The centre equally far from the two farthest places is the next one tried: Newton's step, since a
 * farthest place does not move to first order. Halving where it would stray.
 */
function balanced(farthest: Farthest, length: number, from: number): EnclosingCircle {
  let [low, high] = [0, length];
  let centreX = from;
  for (let step = 0; ; step++) {
    const tail = farthest(centreX, -1);
    const neck = farthest(centreX, 1);
    const most = Math.max(tail.value, neck.value);
    const uneven = tail.value - neck.value;
    if (Math.abs(uneven) <= 16 * Number.EPSILON * most || step === 60) {
      return { centreX, radius: Math.sqrt(most) };
    }
    if (uneven < 0) low = centreX;
    else high = centreX;
    const next = centreX - uneven / (2 * (neck.x - tail.x));
    centreX = next > low && next < high ? next : (low + high) / 2;
  }
}

function farthestSample({ xs, halfWidths }: Edge, centreX: number, side: Side): number {
  let [best, most] = [side < 0 ? 0 : xs.length - 1, -1];
  for (let i = 0; i < xs.length; i++) {
    const ahead = numberAt(xs, i) - centreX;
    if (ahead * side < 0) continue;
    const distance2 = ahead * ahead + numberAt(halfWidths, i) ** 2;
    if (distance2 > most) [best, most] = [i, distance2];
  }
  return best;
}
