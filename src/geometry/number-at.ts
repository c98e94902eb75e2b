/** `values[i]`; the caller keeps i in range, and NaN shows when it did not. */
export const numberAt = (values: ArrayLike<number>, i: number): number => values[i] ?? Number.NaN;
