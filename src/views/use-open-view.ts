import { useSyncExternalStore } from "react";
import { type View, viewAt } from "./view-list.tsx";

/** The view the address names, so that reload and back work. */
export function useOpenView(): View {
  return viewAt(useSyncExternalStore(watchAddress, () => window.location.hash));
}

function watchAddress(changed: () => void): () => void {
  window.addEventListener("hashchange", changed);
  return () => window.removeEventListener("hashchange", changed);
}
