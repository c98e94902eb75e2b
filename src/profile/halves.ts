import { BoutOutline, type Outline } from "../geometry/outline/outline.ts";
import { TracedOutline } from "../geometry/outline/traced-outline.ts";
import type { Body, Tracing } from "../instrument/instrument.ts";

/** The side of the body a half is on, under the bass or the treble strings. */
export type BodySide = "bass" | "treble";

/** One half of the body. y runs to the bass side: a place on its edge is (x, sign · half width). */
export interface Half {
  readonly side: BodySide;
  readonly sign: 1 | -1;
  readonly outline: Outline;
}

/** Both halves of a body: two where they differ, one, the bass half, where the other mirrors it. */
export type Halves = readonly [bass: Half, ...treble: Half[]];

/** The body's halves: the builder's tracings where there are any. */
export function halvesOf(body: Body): Halves {
  const { tracing, tracingTreble } = body;
  const outline = tracing === undefined ? new BoutOutline(body) : tracedOutlineOf(tracing);
  const bass: Half = { side: "bass", sign: 1, outline };
  if (tracingTreble === undefined || isSame(tracing, tracingTreble)) return [bass];
  return [bass, { side: "treble", sign: -1, outline: tracedOutlineOf(tracingTreble) }];
}

/** The half on a side: where the treble half mirrors the bass half, that. */
export const halfOn = ([bass, treble = bass]: Halves, side: BodySide): Half =>
  side === "bass" ? bass : treble;

/** Which side a place is on, to be said after where it is; nothing where both sides have it. */
export const onSide = (side: BodySide | null): string =>
  side === null ? "" : ` on the ${side} side`;

/** Where the body's edges lie at one x. */
export interface Span {
  /** Half the distance between the edges. */
  readonly half: number;
  /** The middle between them, from the centreline toward the bass side. */
  readonly middle: number;
}

export function spanAt([bass, treble]: Halves, x: number): Span {
  return spanOf(bass.outline.halfWidth(x), treble?.outline.halfWidth(x));
}

/** How half the span and its middle change along x. */
export function spanSlopeAt([bass, treble]: Halves, x: number): Span {
  return spanOf(bass.outline.slope(x), treble?.outline.slope(x));
}

const spanOf = (bass: number, treble = bass): Span => ({
  half: (bass + treble) / 2,
  middle: (bass - treble) / 2,
});

const isSame = (one: Tracing | undefined, two: Tracing): boolean =>
  one !== undefined &&
  one.length === two.length &&
  one.every(([x, y], i) => x === two[i]?.[0] && y === two[i]?.[1]);

/** A curve through hundreds of places takes as long as all the rest, and is the same whatever else is changed. */
const traced = new WeakMap<Tracing, Outline>();

function tracedOutlineOf(tracing: Tracing): Outline {
  const outline = traced.get(tracing) ?? new TracedOutline(tracing);
  traced.set(tracing, outline);
  return outline;
}
