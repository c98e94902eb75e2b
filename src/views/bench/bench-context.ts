import { createContext, useContext } from "react";
import { useStore } from "zustand";
import { type Bench, recordOn } from "../../store/document/bench.ts";
import { type BenchStore, makeBenchStore } from "../../store/document/bench-keep.ts";
import { shownPlan } from "../../store/document/plan.ts";
import { useRimwright } from "../store-context.ts";

/** What was done at the bench. Without a provider: a store that forgets. */
export const BenchContext = createContext<BenchStore>(
  makeBenchStore({ getItem: () => null, setItem: () => {} }),
);

/** A part of it; the part must be the same object while nothing of it changes. */
export function useBench<Part>(part: (bench: Bench) => Part): Part {
  return useStore(useContext(BenchContext), part);
}

export function useBenchAct(): (edit: (bench: Bench) => Bench) => void {
  return useContext(BenchContext).setState;
}

/** The instrument worked on: the one last drawn. */
export function useWorkpiece() {
  return useRimwright(shownPlan);
}

/** Its record. */
export function useRecord(id: string) {
  return useBench((bench) => recordOn(bench, id));
}

/** Today by the builder's own calendar. */
export function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
