import { createStore, useStore } from "zustand";
import type { BraceShape } from "../../drawing/side/brace.ts";
import type { Givens } from "../../profile/givens.ts";
import { useRimwright } from "../store-context.ts";

export type Plate = "Top" | "Back";

/** A brace as chosen; what is left out follows the body. */
export interface BraceWish {
  readonly key: number;
  readonly length?: number;
  readonly radius?: number | null;
}

/** As many as one plate has room for. */
export const mostBraces = 8;

const usual: readonly BraceWish[] = [{ key: 0 }];

/** The braces chosen since the page was opened, by plate and instrument: the Rim's list and the templates' are one. */
const chosen = createStore<Readonly<Record<string, readonly BraceWish[]>>>(() => ({}));

export function useBraces(
  plate: Plate,
): readonly [readonly BraceWish[], (next: readonly BraceWish[]) => void] {
  const id = useRimwright((state) => state.instrument.id);
  const slot = `${plate} ${id}`;
  const wishes = useStore(chosen, (all) => all[slot] ?? usual);
  return [wishes, (next) => chosen.setState({ [slot]: next })];
}

/** A brace as it is drawn: as long as the body is wide and arched to its plate's radius, unless chosen otherwise. */
export function braceShape(
  plate: Plate,
  { length, radius }: BraceWish,
  { outline, instrument: { dome, body } }: Givens,
): BraceShape {
  const planned = plate === "Top" ? dome.braceRadius : body.backRadius;
  return {
    length: length ?? Math.round(2 * outline.widest),
    radius: radius === undefined ? planned : radius,
  };
}
