/** How a measure may be shown: where its line stands, in which wording, and where the text is, each as an index into a list. */
export interface Arrangement {
  readonly offset: number;
  readonly wording: number;
  readonly place: number;
  /** What speaks against it, 0 for nothing. */
  readonly cost: number;
}

/** What each wording costs, the fullest first: dropping words is cheap, dropping the measure's name is not. */
const wordingCosts: readonly number[] = [0, 2, 7];

/** Every arrangement among offsets and places of those costs, the cheapest first. */
export function arrangementsByCost(
  offsetCosts: readonly number[],
  placeCosts: readonly number[],
): readonly Arrangement[] {
  return offsetCosts
    .flatMap((offsetCost, offset) =>
      wordingCosts.flatMap((wordingCost, wording) =>
        placeCosts.map((placeCost, place) => ({
          offset,
          wording,
          place,
          cost: offsetCost + wordingCost + placeCost,
        })),
      ),
    )
    .sort((a, b) => a.cost - b.cost);
}

/** Costs that rise evenly from nothing. */
export const evenCosts = (count: number, step: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => i * step);
