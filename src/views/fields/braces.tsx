import {
  createContext,
  type Dispatch,
  type ReactNode,
  type SetStateAction,
  useMemo,
  useState,
} from "react";
import type { BraceShape } from "../../drawing/side/brace.ts";
import type { Givens } from "../../profile/givens.ts";
import { useGiven, useRimwright } from "../store-context.ts";

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

/** The braces chosen, by plate and instrument. */
type Chosen = Readonly<Record<string, readonly BraceWish[]>>;

interface BraceChoices {
  readonly chosen: Chosen;
  readonly setChosen: Dispatch<SetStateAction<Chosen>>;
}

const BracesContext = createContext<BraceChoices | null>(null);

/** Holds the braces chosen since the page was opened, so that the Rim's list and the templates' are one. */
export function BracesProvider({ children }: { readonly children: ReactNode }) {
  const [chosen, setChosen] = useState<Chosen>({});
  const choices = useMemo(() => ({ chosen, setChosen }), [chosen]);
  return <BracesContext value={choices}>{children}</BracesContext>;
}

export function useBraces(
  plate: Plate,
): readonly [readonly BraceWish[], (next: readonly BraceWish[]) => void] {
  const id = useRimwright((state) => state.instrument.id);
  const { chosen, setChosen } = useGiven(BracesContext);
  const slot = `${plate} ${id}`;
  return [chosen[slot] ?? usual, (next) => setChosen((before) => ({ ...before, [slot]: next }))];
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
