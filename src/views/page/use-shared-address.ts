import { useEffect, useState } from "react";
import type { ReadInstrumentResult } from "../../instrument/read-instrument.ts";
import { startFrom } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { sharedIn } from "../../store/files/shared-address.ts";
import { fetchLate } from "../fetch-late.ts";
import { useEdit } from "../store-context.ts";

interface Shared {
  /** Why the address's instrument cannot be shown; null when it is, or none was asked for. */
  readonly trouble: string | null;
  /** The id under which the last one is shown. */
  readonly id: string | null;
}

const notFetched =
  "What reads the instrument in this address could not be fetched. It is tried again by itself; if it does not come, reload the page.";

/** Shows the instrument an address holds, now or later; what was open can be put back. It comes to the shelf only when the builder keeps or changes it. */
export function useSharedAddress(): Shared {
  const edit = useEdit();
  const [shared, setShared] = useState<Shared>({ trouble: null, id: null });
  useEffect(() => {
    const open = (read: ReadInstrumentResult): void => {
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
    let giveUp = (): void => {};
    const openShared = (): void => {
      giveUp();
      const text = sharedIn(window.location.hash);
      if (text === null) return;
      giveUp = fetchLate(() => import("../../store/files/share.ts"), {
        onPart: ({ readShareText }) => void readShareText(text).then(open),
        onFailure: () => setShared({ trouble: notFetched, id: null }),
      });
    };
    openShared();
    addEventListener("hashchange", openShared);
    return () => {
      giveUp();
      removeEventListener("hashchange", openShared);
    };
  }, [edit]);
  return shared;
}
