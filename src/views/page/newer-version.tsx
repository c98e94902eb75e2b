import type { Session } from "../../store/shelf/session.ts";
import { useOfflineCopy } from "./offline-copy.ts";

/** A newer page waits until the builder says so: what is on screen is saved first. */
export function NewerNote({ session }: { readonly session: Session | null }) {
  const copy = useOfflineCopy();
  if (copy.is === "quiet") return null;
  if (copy.is === "incomplete")
    return (
      <p className="page-note" role="status">
        Not all of Rimwright has come over whole, so it cannot be opened without a network yet. It
        is tried again by itself.
      </p>
    );
  const { told, deed, act } =
    copy.is === "newer"
      ? {
          told: "A newer Rimwright is ready. It waits until you want it; nothing on screen is lost.",
          deed: "Use it now",
          act: copy.use,
        }
      : {
          told: "Another tab has gone over to a newer Rimwright. Reload this one to follow.",
          deed: "Reload",
          act: () => window.location.reload(),
        };
  const onPress = async (): Promise<void> => {
    // A shelf that refuses must not keep the builder from the newer page: the tab's own copy has it all.
    await session?.flush().catch(() => {});
    act();
  };
  return (
    <p className="page-note" role="status">
      {told}{" "}
      <button type="button" onClick={() => void onPress()}>
        {deed}
      </button>
    </p>
  );
}
