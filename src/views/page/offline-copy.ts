import { useEffect, useState } from "react";

/** How the copy of the page stands that the browser keeps for use without a network. */
export type OfflineCopy =
  /** There is nothing to tell: it is whole, or on its way, or this browser keeps none. */
  | { readonly is: "quiet" }
  /** Not all of it has come whole, and none of it is used; it is tried again. */
  | { readonly is: "incomplete" }
  /** A newer page is here whole and waits to be used. */
  | { readonly is: "newer"; readonly use: () => void }
  /** Another tab has taken a newer page into use. */
  | { readonly is: "overtaken" };

/** Pauses before a copy that did not come whole is fetched again, ms; the last before every further time. */
const pauses = [10_000, 60_000, 600_000] as const;

/**
 * Keeps the page's copy and tells how it stands. A newer page never comes into use by itself: only when
 * told to, or with every tab closed.
 */
export function useOfflineCopy(): OfflineCopy {
  const [copy, setCopy] = useState<OfflineCopy>({ is: "quiet" });
  useEffect(() => {
    const { serviceWorker } = navigator;
    // The page for developing has no copy; a plain http address of the shop's network gets none.
    return import.meta.env.PROD && serviceWorker !== undefined
      ? follow(serviceWorker, setCopy)
      : undefined;
  }, []);
  return copy;
}

/** Returns what ends it. */
function follow(container: ServiceWorkerContainer, tell: (copy: OfflineCopy) => void): () => void {
  let isWanted = false;
  let isControlled = container.controller !== null;
  let tries = 0;
  let retry: ReturnType<typeof setTimeout> | undefined;

  const onController = (): void => {
    if (isWanted) window.location.reload();
    // The first worker of a first visit replaces nothing.
    else if (isControlled) tell({ is: "overtaken" });
    isControlled = true;
  };
  const tryLater = (): void => {
    clearTimeout(retry);
    retry = setTimeout(() => void register(), pauses[Math.min(tries, pauses.length - 1)]);
    tries += 1;
  };
  const look = ({ active, waiting }: ServiceWorkerRegistration): void => {
    if (active === null || waiting === null) return;
    const use = (): void => {
      isWanted = true;
      waiting.postMessage({ type: "SKIP_WAITING" });
    };
    tell({ is: "newer", use });
  };
  const watch = (registration: ServiceWorkerRegistration): void => {
    const { installing } = registration;
    if (installing === null) return;
    let isWhole = false;
    installing.addEventListener("statechange", () => {
      if (installing.state === "installed") {
        isWhole = true;
        if (registration.active === null) tell({ is: "quiet" });
      }
      look(registration);
      if (installing.state !== "redundant" || isWhole) return;
      if (registration.active === null) tell({ is: "incomplete" });
      tryLater();
    });
  };
  const register = async (): Promise<void> => {
    try {
      const registration = await container.register(new URL("sw.js", document.baseURI));
      watch(registration);
      look(registration);
      registration.addEventListener("updatefound", () => watch(registration));
      if (tries > 0) await registration.update();
    } catch {
      // Out of reach, or not a worker: what is here goes on.
      tryLater();
    }
  };

  container.addEventListener("controllerchange", onController);
  void register();
  return () => {
    clearTimeout(retry);
    container.removeEventListener("controllerchange", onController);
  };
}
