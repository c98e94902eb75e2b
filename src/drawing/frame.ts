/** A place on the drawing: px, y downward. */
export type Point = readonly [x: number, y: number];

/**
 * How millimetres on the centreline plane lie on the drawing: x toward the neck is px to the right,
 * z out of the top is px up, or down when the rim lies top down on the board.
 */
export interface Frame {
  /** px a mm along, and px a mm of height; their ratio is the stretch. */
  readonly along: number;
  readonly up: number;
  /** Where x = 0 and z = 0 fall, px. */
  readonly left: number;
  readonly level: number;
  readonly turned: boolean;
}

export const pxAt = (frame: Frame, x: number): number => frame.left + x * frame.along;

export const pyAt = (frame: Frame, z: number): number =>
  frame.level - (frame.turned ? -z : z) * frame.up;

export const pointAt = (frame: Frame, x: number, z: number): Point => [
  pxAt(frame, x),
  pyAt(frame, z),
];

/** The inverses of `pxAt` and `pyAt`, mm. */
export const xAt = (frame: Frame, px: number): number => (px - frame.left) / frame.along;

export const zAt = (frame: Frame, py: number): number =>
  ((frame.turned ? -1 : 1) * (frame.level - py)) / frame.up;
