/** The few functions of jstat the tests hold our own against; the package brings no types. */
declare module "jstat" {
  export const studentt: { inv(p: number, dof: number): number };
  export const normal: { sample(mean: number, std: number): number };
  export function quantiles(values: readonly number[], shares: readonly number[]): number[];
  export function mean(values: readonly number[]): number;
  export function stdev(values: readonly number[], sample: boolean): number;
  export function tci(value: number, alpha: number, values: readonly number[]): [number, number];
}
