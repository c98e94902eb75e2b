import { useEffect, useState } from "react";
import { startFrom } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { sharedIn } from "../../store/files/shared-address.ts";
import { useEdit } from "../store-context.ts";

interface Shared {
  /** Why the address's instrument cannot be shown; null when it is, or none was asked for. */
  readonly trouble: string | null;
  /** The id under which the last one is shown. */
  readonly id: string | null;
}

/** Shows the instrument an address holds, now or later; what was open can be put back. It comes to the shelf only when the builder keeps or changes it. */
export function useSharedAddress(): Shared {
  const edit = useEdit();
  const [shared, setShared] = useState<Shared>({ trouble: null, id: null });
  useEffect(() => {
    const openShared = async (): Promise<void> => {
      const text = sharedIn(window.location.hash);
      if (text === null) return;
      const { readShareText } = await import("../../store/files/share.ts");
      const read = await readShareText(text);
      if (read.ok) {
        const id = newId();
        edit((state) => startFrom(state, read.instrument, id));
        setShared({ trouble: null, id });
      } else {
        const trouble = read.problems[0]?.message ?? "The address holds no instrument.";
        setShared({ trouble, id: null });
      }
      window.location.replace("#/layout");
    };
    void openShared();
    const changed = (): void => void openShared();
    addEventListener("hashchange", changed);
    return () => removeEventListener("hashchange", changed);
  }, [edit]);
  return shared;
}
