import { tabKeeper } from "../shelf/page-keeper.ts";
import { makeKeptStore } from "./store.ts";

/** The page's own store, which goes on where this tab stopped. */
export const pageStore = makeKeptStore(tabKeeper(), window);
