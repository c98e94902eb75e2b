export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
export const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** 1/radius in 1/mm; a null radius is a straight line, curvature 0. */
export const curvatureOf = (radius: number | null): number => (radius === null ? 0 : 1 / radius);

/**
 * Height of an arc of `curvature` (1/mm) over its chord, from half the chord's length (mm); 0 for a
 * straight line. NaN when the half chord exceeds the radius: the caller must have ruled that out.
 *
 * r − √(r² − c²) written as κc²/(1 + √(1 − κ²c²)), which loses no digits when the arc is shallow.
 */
export function sagitta(curvature: number, halfChord: number): number {
  const kc = curvature * halfChord;
  return (kc * halfChord) / (1 + Math.sqrt(1 - kc * kc));
}
