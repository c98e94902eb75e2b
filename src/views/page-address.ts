import { useSyncExternalStore } from "react";

/** Who can open an address: anyone, who is on the same network, or this device alone. */
export type Reach = "anyone" | "network" | "device";

export function reachOf(address: string): Reach {
  const { protocol, hostname } = new URL(address);
  if (protocol === "file:" || device.test(hostname)) return "device";
  // A name without a dot, and the names and numbers set aside for private networks (RFC 1918, 3927, 4193, 6762, 8375).
  return /^[^.[]+$/.test(hostname) || network.test(hostname) ? "network" : "anyone";
}

const device = /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\])$/;
const network =
  /^(10(\.\d+){3}|192\.168(\.\d+){2}|172\.(1[6-9]|2\d|3[01])(\.\d+){2}|169\.254(\.\d+){2}|\[f[cde].*\]|.*\.(local|lan|internal|home\.arpa))$/;

/** What is wrong with the address a builder states for the published page; null when nothing is. */
export function addressFault(text: string): string | null {
  if (!URL.canParse(text) || !/^https?:/.test(text))
    return "Write the whole address, from “https://” on.";
  return reachOf(text) === "anyone" ? null : "This one too opens on your own network only.";
}

const key = "rimwright-published";
const listeners = new Set<() => void>();

/** The address of the builder's published copy, as typed; "" while none is stated. */
export function usePublished(): [text: string, state: (text: string) => void] {
  return [useSyncExternalStore(watch, published), statePublished];
}

function watch(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}

/** Where the browser stores nothing, it is held for this visit. */
let unstored = "";

function published(): string {
  try {
    return localStorage.getItem(key) ?? unstored;
  } catch {
    return unstored;
  }
}

function statePublished(text: string): void {
  unstored = text;
  try {
    localStorage.setItem(key, text);
  } catch {
    // It is held above.
  }
  for (const changed of listeners) changed();
}

/** The address that what is shared opens at: the published copy's where one is stated, else this page's own. */
export function useSharedBase(): string {
  const [text] = usePublished();
  return addressFault(text) === null ? text : window.location.href;
}
