import { useSyncExternalStore } from "react";

/** Whether a media query holds, where there are such; else not. */
export function useMedia(query: string): boolean {
  const watch = (changed: () => void): (() => void) => {
    const list = window.matchMedia?.(query);
    list?.addEventListener("change", changed);
    return () => list?.removeEventListener("change", changed);
  };
  return useSyncExternalStore(watch, () => window.matchMedia?.(query).matches ?? false);
}
