/** Lengths of an instrument's texts, in UTF-16 units. */
export const textLimits = { id: 100, name: 200, notes: 10_000 } as const;
