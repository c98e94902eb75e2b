import { createRoot } from "react-dom/client";
import type { Keeper } from "./store/keep.ts";
import { makeKeptStore } from "./store/store.ts";
import { App } from "./views/app.tsx";

/** What the browser keeps between visits; nothing where it refuses. */
function keeper(): Keeper {
  try {
    return window.localStorage;
  } catch {
    return { getItem: () => null, setItem: () => {} };
  }
}

const root = document.getElementById("root");
// What a fence has caught is told on the page, and is no news for the console.
if (root !== null)
  createRoot(root, { onCaughtError: () => {} }).render(
    <App store={makeKeptStore(keeper(), window)} />,
  );
