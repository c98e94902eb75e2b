import { createRoot } from "react-dom/client";
import { tabKeeper } from "./store/page-keeper.ts";
import { makeShelfSlot } from "./store/shelf-slot.ts";
import { makeKeptStore } from "./store/store.ts";
import { App } from "./views/app.tsx";

const root = document.getElementById("root");
const store = makeKeptStore(tabKeeper(), window);
const slot = makeShelfSlot();
// What a fence has caught is told on the page, and is no news for the console.
if (root !== null)
  createRoot(root, { onCaughtError: () => {} }).render(<App store={store} slot={slot} />);

// The shelf can wait for the first drawing.
void import("./store/start-shelf.ts").then(({ startShelf }) => startShelf(store, slot));
