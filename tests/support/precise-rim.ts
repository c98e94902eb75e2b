import { Exact, exact, highestOver, peaksOver, root } from "./high-precision.ts";
import { domeOn, type Ground, type Height, sphereHeight, sphereThrough } from "./precise-dome.ts";

/** What comes off the rim, and what is left of the sides, for one shim. */
export interface PreciseRim {
  readonly overrunLength: Exact;
  readonly overrunDepth: Exact;
  readonly rimOffset: Exact;
  readonly maxRemoval: Exact;
  /** Largest of what comes off and what is left of the side, together. */
  readonly stockWidth: Exact;
  readonly removal: (x: Exact) => Exact;
  readonly sideDepth: (x: Exact) => Exact;
}

/** Height of the domed rim's outer edge over the flat's plane. */
function edgeOn(ground: Ground, shim: Exact): (x: Exact) => Exact {
  const { height } = domeOn(ground, shim);
  return (x) => height(x, ground.outline.halfWidth(x));
}

/**
 * The edge's height over the distance from the break. It has the height's sign, and at the break, where
 * the height is 0 whatever the shim, it says which way the edge sets off.
 */
function steepnessOn(ground: Ground, shim: Exact): (x: Exact) => Exact {
  const edge = edgeOn(ground, shim);
  const shy = exact("1e-18");
  return (x) => {
    const place = x.gte(ground.breakX) ? ground.breakX.minus(shy) : x;
    return edge(place).div(ground.breakX.minus(place));
  };
}

function overrunOn(ground: Ground, shim: Exact): { length: Exact; depth: Exact } {
  const steepness = steepnessOn(ground, shim);
  const places = ground.tailSide;
  const rising = peaksOver(steepness, places).find((peak) => peak.value.gt(0));
  if (rising === undefined) return { length: exact(0), depth: exact(0) };
  const inside = places.find((x) => x.lt(rising.x) && steepness(x).gt(0)) ?? rising.x;
  const outside = places.filter((x) => x.lt(inside)).at(-1) ?? exact(0);
  const start = root(steepness, outside, inside);
  return {
    length: ground.breakX.minus(start),
    depth: highestOver(edgeOn(ground, shim), places).value,
  };
}

export function rimOf(ground: Ground, shim: Exact): PreciseRim {
  const { instrument, breakX, outline } = ground;
  const edge = edgeOn(ground, shim);
  const tailDrop = edge(exact(0)).negated();
  const slope = tailDrop.minus(instrument.dome.tailExtra).div(breakX);
  const cosine = exact(1).div(slope.pow(2).plus(1).sqrt());
  const top = (x: Exact): Exact => (x.lt(breakX) ? edge(x) : exact(0));
  const removal = (x: Exact): Exact => x.minus(breakX).times(slope).minus(top(x)).times(cosine);
  const neckEnd = exact(instrument.body.length);
  const places = [...ground.tailSide, neckEnd];
  const least = highestOver((x) => removal(x).negated(), places).value.negated();
  const rimOffset = Exact.max(0, least.negated());
  const back = backOf(ground, tailDrop);
  const sideDepth = (x: Exact): Exact => top(x).minus(back(x, outline.halfWidth(x)));
  const overrun = overrunOn(ground, shim);
  return {
    overrunLength: overrun.length,
    overrunDepth: overrun.depth,
    rimOffset,
    maxRemoval: highestOver(removal, places).value.plus(rimOffset),
    stockWidth: Exact.max(
      highestOver((x) => removal(x).plus(sideDepth(x)), places).value,
      removal(neckEnd).minus(back(neckEnd, exact(0))),
    ).plus(rimOffset),
    removal,
    sideDepth,
  };
}

/** The back: a sphere or a plane through the back of the rim at the tail end and at the neck end's corners. */
function backOf(ground: Ground, tailDrop: Exact): Height {
  const { body } = ground.instrument;
  const tail = [exact(0), exact(0), tailDrop.plus(body.depthTail).negated()] as const;
  const neck = [
    exact(body.length),
    exact(body.neckEndWidth).div(2),
    exact(-body.depthNeck),
  ] as const;
  if (body.backRadius === null) {
    return (x) => tail[2].plus(neck[2].minus(tail[2]).times(x).div(body.length));
  }
  const sphere = sphereThrough(exact(body.backRadius), tail, neck, 1);
  return (x, y) => sphereHeight(sphere, x, y);
}

/** The thinnest shim with no overrun. */
export function cleanShim(ground: Ground): Exact {
  const places = ground.tailSide;
  const worst = (shim: Exact): Exact => highestOver(steepnessOn(ground, shim), places).value;
  let [low, high] = [exact(0), exact(16)];
  while (worst(low).isNegative()) low = low.minus(16);
  while (worst(high).isPositive()) high = high.times(2);
  return root(worst, low, high);
}

/** Diameter of the smallest circle, centred on the centreline, round the outline up to the break. */
export function dishNeeded(ground: Ground): Exact {
  const places = ground.tailSide.filter((_place, i) => i % 4 === 0);
  places.push(ground.breakX);
  const farthest = (centre: Exact): Exact =>
    highestOver((x) => x.minus(centre).pow(2).plus(ground.outline.halfWidth(x).pow(2)), places)
      .value;
  const centred = highestOver((centre) => farthest(centre).negated(), places);
  return centred.value.negated().sqrt().times(2);
}
