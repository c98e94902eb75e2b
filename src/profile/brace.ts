import { curvatureOf, sagitta } from "../geometry/circle.ts";

/** The arch of a brace at one place. */
export interface BraceRise {
  /** From the brace's middle, mm, toward either end. */
  readonly fromMiddle: number;
  /** Over the straight line between the ends of the arched edge. */
  readonly rise: number;
  /** Under the arched edge's middle. */
  readonly drop: number;
}

/** Why a brace cannot be arched so: it is longer than the circle is wide. */
export function braceFits(length: number, radius: number | null): boolean {
  return radius === null || length <= 2 * radius;
}

/** Height of a brace's arch over its own ends, or depth of a dish in the middle from its diameter, mm. `radius` null is a straight brace. Needs `braceFits`. */
export function archOf(length: number, radius: number | null): number {
  return sagitta(curvatureOf(radius), length / 2);
}

/**
 * Rises of a brace arched to `radius` (mm; null is straight): its middle, every `every` mm from there
 * toward an end, and the end. Both ends are alike. Needs `braceFits`.
 */
export function braceRises(
  length: number,
  radius: number | null,
  every: number,
): readonly BraceRise[] {
  const half = length / 2;
  const arch = archOf(length, radius);
  const places = Array.from({ length: Math.ceil(half / every) }, (_, i) => i * every);
  return [...places, half].map((fromMiddle) => {
    const drop = sagitta(curvatureOf(radius), fromMiddle);
    return { fromMiddle, rise: arch - drop, drop };
  });
}
