import { useEffect, useState } from "react";

/** A newer version of the page that waits to be used, or that another tab has taken into use. */
export type NewerPage =
  | { readonly is: "none" }
  | { readonly is: "waiting"; readonly use: () => void }
  | { readonly is: "in use" };

/** Watches for a newer page. It never comes into use by itself: only when told to, or with every tab closed. */
export function useNewerPage(): NewerPage {
  const [newer, setNewer] = useState<NewerPage>({ is: "none" });
  useEffect(() => {
    const { serviceWorker } = navigator;
    // The first worker of a first visit replaces nothing.
    if (serviceWorker?.controller == null) return;
    let told = false;
    const changed = (): void => {
      if (told) window.location.reload();
      else setNewer({ is: "in use" });
    };
    serviceWorker.addEventListener("controllerchange", changed);
    void serviceWorker.ready.then((registration) => {
      const look = (): void => {
        const { waiting } = registration;
        if (waiting === null) return;
        const use = (): void => {
          told = true;
          waiting.postMessage({ type: "SKIP_WAITING" });
        };
        setNewer({ is: "waiting", use });
      };
      registration.addEventListener("updatefound", () => {
        registration.installing?.addEventListener("statechange", look);
      });
      look();
    });
    return () => serviceWorker.removeEventListener("controllerchange", changed);
  }, []);
  return newer;
}
