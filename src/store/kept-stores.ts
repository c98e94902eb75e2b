import { makeBenchStore } from "./bench-keep.ts";
import { makeCompareStore } from "./compare-keep.ts";
import { pageKeeper } from "./page-keeper.ts";

/** What is kept beside the open instrument, one store of each for the page. Loaded with the first view that needs them. */
export const benchStore = makeBenchStore(pageKeeper());
export const compareStore = makeCompareStore(pageKeeper());
