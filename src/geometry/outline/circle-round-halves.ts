import type { Place } from "../polyline.ts";
import { type Edge, highestOn } from "./edge.ts";
import type { Outline } from "./outline.ts";

/** One half of a body, at y = sign · half width, looked at along `edge`. */
interface HalfEdge {
  readonly outline: Outline;
  readonly sign: 1 | -1;
  readonly edge: Edge;
}

interface Circle {
  readonly centre: Place;
  readonly radius: number;
}

/**
 * Smallest circle round two halves that differ. It is held by two or three places of the edge; the farthest
 * place from its centre takes part in the next one, which is larger, until none is farther. Places near the
 * right ones give a radius that errs by the square of how far they are off, so few steps are needed.
 */
export function circleRound(halves: readonly HalfEdge[]): Circle {
  let held: readonly Place[] = [[0, 0]];
  let circle: Circle = { centre: [0, 0], radius: 0 };
  for (let step = 0; step < 60; step++) {
    const { place, distance } = farthestFrom(halves, circle.centre);
    if (distance <= circle.radius * (1 + 8 * Number.EPSILON)) break;
    const next = smallestRound([...held, place]);
    if (!(next.circle.radius > circle.radius)) break;
    [held, circle] = [next.held, next.circle];
  }
  return circle;
}

function farthestFrom(halves: readonly HalfEdge[], [cx, cy]: Place) {
  const peaks = halves.map(({ outline, edge, sign }) => {
    const { x, value } = highestOn(outline, edge, (x, y) => (x - cx) ** 2 + (sign * y - cy) ** 2);
    const [placeX, halfWidth] = outline.placeAt(x);
    const place: Place = [placeX, sign * halfWidth];
    return { place, distance: Math.sqrt(value) };
  });
  return peaks.reduce((far, peak) => (peak.distance > far.distance ? peak : far));
}

interface HeldCircle {
  readonly circle: Circle;
  readonly held: readonly Place[];
}

/** The smallest circle round at most four places: of those on two or three of them the one that holds all. */
function smallestRound(places: readonly Place[]): HeldCircle {
  const found = groupsOf(places)
    .map((held): HeldCircle => ({ held, circle: circleOn(held) }))
    .filter(({ circle }) => places.every((place) => within(circle, place)));
  const [first, ...rest] = found;
  if (first === undefined) return { held: places, circle: { centre: [0, 0], radius: 0 } };
  return rest.reduce((best, one) => (one.circle.radius < best.circle.radius ? one : best), first);
}

/** Pairs and triples. */
const groupsOf = (places: readonly Place[]): readonly (readonly Place[])[] =>
  places.flatMap((a, i) =>
    places
      .slice(i + 1)
      .flatMap((b, j) => [[a, b], ...places.slice(i + j + 2).map((c) => [a, b, c])]),
  );

const within = ({ centre, radius }: Circle, [x, y]: Place): boolean =>
  Math.hypot(x - centre[0], y - centre[1]) <= radius * (1 + 1e-13);

/** Through both places, the line between them its diameter, or through three. */
function circleOn([a = [0, 0], b = a, c]: readonly Place[]): Circle {
  const [bx, by] = [b[0] - a[0], b[1] - a[1]];
  const [px, py] =
    c === undefined ? [bx / 2, by / 2] : equallyFar(bx, by, c[0] - a[0], c[1] - a[1]);
  return { centre: [a[0] + px, a[1] + py], radius: Math.hypot(px, py) };
}

/** The place as far from the origin as from (bx, by) and (cx, cy). */
function equallyFar(bx: number, by: number, cx: number, cy: number): Place {
  const twice = 2 * (bx * cy - by * cx);
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
  return [(cy * b2 - by * c2) / twice, (bx * c2 - cx * b2) / twice];
}
