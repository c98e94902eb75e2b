import type { Session } from "../store/session.ts";
import { useNewerPage } from "./use-newer-page.ts";

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
