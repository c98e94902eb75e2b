import { createRoot } from "react-dom/client";
import { firstState, type State } from "./store/document/state.ts";
import { tabStorage } from "./store/shelf/browser-storage.ts";
import { watchEarlyEdits } from "./store/shelf/left-early.ts";
import { makeShelfSlot } from "./store/shelf/shelf-slot.ts";
import { makeShopStore } from "./store/shelf/shop.ts";
import { hasTabCopy, openTabStore } from "./store/shelf/tab-copy.ts";
import { App } from "./views/page/app.tsx";

const storage = tabStorage();

function open(stored: State): void {
  const root = document.getElementById("root");
  const store = openTabStore(storage, window, stored);
  const takeEarly = watchEarlyEdits(store);
  const [shop, slot] = [makeShopStore(), makeShelfSlot()];
  // What an error boundary has caught is told on the page, and is no news for the console.
  if (root !== null)
    createRoot(root, { onCaughtError: () => {} }).render(
      <App store={store} shop={shop} slot={slot} />,
    );

  // Shop and shelf can wait for the first drawing.
  void import("./store/shelf/start-shelf.ts").then(({ startShelf }) =>
    startShelf({ store, takeEarly, shop, slot }),
  );
}

// A first visit has nothing to read, and does not wait for what reads.
if (hasTabCopy(storage))
  void import("./store/shelf/read-tab-copy.ts").then(({ readTabCopy }) =>
    open(readTabCopy(storage)),
  );
else open(firstState);
