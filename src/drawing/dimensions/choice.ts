/** One way of showing a measure out of many: which stand, which wording and which place of the text, by number. */
export interface Choice {
  readonly stand: number;
  readonly wording: number;
  readonly place: number;
  /** What speaks against it, 0 for nothing. */
  readonly cost: number;
}

/** What each wording costs, the fullest first: dropping words is cheap, dropping the measure's name is not. */
const wordingCosts: readonly number[] = [0, 2, 7];

/** Every choice among stands and places of those costs, the cheapest first. */
export function risingChoices(
  standCosts: readonly number[],
  placeCosts: readonly number[],
): readonly Choice[] {
  return standCosts
    .flatMap((standCost, stand) =>
      wordingCosts.flatMap((wordingCost, wording) =>
        placeCosts.map((placeCost, place) => ({
          stand,
          wording,
          place,
          cost: standCost + wordingCost + placeCost,
        })),
      ),
    )
    .sort((a, b) => a.cost - b.cost);
}

/** Costs that rise evenly from nothing. */
export const rising = (count: number, step: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => i * step);
