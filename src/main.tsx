import { createRoot } from "react-dom/client";
import { pageStore } from "./store/document/page-store.ts";
import { makeShelfSlot } from "./store/shelf/shelf-slot.ts";
import { App } from "./views/page/app.tsx";

const root = document.getElementById("root");
const slot = makeShelfSlot();
// What a fence has caught is told on the page, and is no news for the console.
if (root !== null)
  createRoot(root, { onCaughtError: () => {} }).render(<App store={pageStore} slot={slot} />);

// The shelf can wait for the first drawing.
void import("./store/shelf/start-shelf.ts").then(({ startShelf }) => startShelf(slot));
