import { createRoot, type Root } from "react-dom/client";
import { firstState, type State } from "./store/document/state.ts";
import { tabStorage } from "./store/shelf/browser-storage.ts";
import { watchEarlyEdits } from "./store/shelf/left-early.ts";
import { makeShelfSlot } from "./store/shelf/shelf-slot.ts";
import { makeShopStore } from "./store/shelf/shop.ts";
import { hasTabCopy, openTabStore } from "./store/shelf/tab-copy.ts";
import { fetchLate } from "./views/fetch-late.ts";
import { NotFetched } from "./views/late-part.tsx";
import { App } from "./views/page/app.tsx";

const storage = tabStorage();

/** Draws the page on what was stored. Shop and shelf can wait for the first drawing. */
function open(root: Root, stored: State): void {
  const store = openTabStore(storage, window, stored);
  const takeEarly = watchEarlyEdits(store);
  const [shop, slot] = [makeShopStore(), makeShelfSlot()];
  root.render(<App store={store} shop={shop} slot={slot} />);
  fetchLate(() => import("./store/shelf/start-shelf.ts"), {
    onPart: ({ startShelf }) => void startShelf({ store, takeEarly, shop, slot }),
    onFailure: () => slot.setState({ is: "not fetched" }, true),
  });
}

/** A first visit has nothing to read, and does not wait for what reads. */
function start(root: Root): void {
  if (hasTabCopy(storage))
    fetchLate(() => import("./store/shelf/read-tab-copy.ts"), {
      onPart: ({ readTabCopy }) => open(root, readTabCopy(storage)),
      onFailure: () => root.render(<NotFetched what={workUnread} />),
    });
  else open(root, firstState);
}

const workUnread = "What opens your work, which is still here as you left it,";

/** What the page cannot do without, of which older browsers lack the one or the other. */
const isSupported =
  "adoptedStyleSheets" in document &&
  "toSorted" in Array.prototype &&
  typeof CompressionStream === "function";

const place = document.getElementById("root");
if (place !== null && isSupported)
  // What an error boundary has caught is told on the page, and is no news for the console.
  start(createRoot(place, { onCaughtError: () => {} }));
else if (place !== null)
  place.textContent =
    "Rimwright needs a newer browser than this one: Safari 16.4, Firefox 128, Chrome or Edge 111, or later.";
