import { useEffect, useState } from "react";
import type { Session } from "../../store/shelf/session.ts";

/** A newer page waits until the builder says so: what is on screen is saved first. */
export function NewerNote({ session }: { readonly session: Session | null }) {
  const newer = useNewerPage();
  if (newer.is === "none") return null;
  const { told, deed, act } =
    newer.is === "waiting"
      ? {
          told: "A newer Rimwright is ready. It waits until you want it; nothing on screen is lost.",
          deed: "Use it now",
          act: newer.use,
        }
      : {
          told: "Another tab has gone over to a newer Rimwright. Reload this one to follow.",
          deed: "Reload",
          act: () => window.location.reload(),
        };
  const saved = async (): Promise<void> => {
    await session?.flush();
    act();
  };
  return (
    <p className="page-note" role="status">
      {told}{" "}
      <button type="button" onClick={() => void saved()}>
        {deed}
      </button>
    </p>
  );
}

/** A newer version of the page that waits to be used, or that another tab has taken into use. */
export type NewerPage =
  | { readonly is: "none" }
  | { readonly is: "waiting"; readonly use: () => void }
  | { readonly is: "in use" };

/** Watches for a newer page. It never comes into use by itself: only when told to, or with every tab closed. */
function useNewerPage(): NewerPage {
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
