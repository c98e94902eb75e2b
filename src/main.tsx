import { createRoot } from "react-dom/client";
import { tabStorage } from "./store/shelf/browser-storage.ts";
import { makeShelfSlot } from "./store/shelf/shelf-slot.ts";
import { makeShopStore } from "./store/shelf/shop.ts";
import { openTabStore } from "./store/shelf/tab-copy.ts";
import { App } from "./views/page/app.tsx";

const root = document.getElementById("root");
const store = openTabStore(tabStorage(), window);
const [shop, slot] = [makeShopStore(), makeShelfSlot()];
// What an error boundary has caught is told on the page, and is no news for the console.
if (root !== null)
  createRoot(root, { onCaughtError: () => {} }).render(
    <App store={store} shop={shop} slot={slot} />,
  );

// Shop and shelf can wait for the first drawing.
void import("./store/shelf/start-shelf.ts").then(({ startShelf }) =>
  startShelf({ store, shop, slot }),
);
