import { pageKeeper } from "../shelf/page-keeper.ts";
import { makeBenchStore } from "./bench-keep.ts";
import { makeCompareStore } from "./compare-keep.ts";
import { pageStore } from "./page-store.ts";

/** The open instrument's record and comparison, one store of each for the page. Loaded with the first view that needs them. */
export const benchStore = makeBenchStore(pageKeeper(), pageStore);
export const compareStore = makeCompareStore(pageStore);
