import { useEffect, useState } from "react";
import { startFrom } from "../store/edits.ts";
import { newId } from "../store/new-id.ts";
import { sharedIn } from "../store/shared-address.ts";
import { useAct } from "./store-context.ts";

/** Shows the instrument an address holds, now or later; what was open can be put back. Tells why when it holds none that can be read. */
export function useSharedAddress(): string | null {
  const act = useAct();
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    const look = async (): Promise<void> => {
      const text = sharedIn(window.location.hash);
      if (text === null) return;
      const { readShareText } = await import("../store/share.ts");
      const read = await readShareText(text);
      if (read.ok) act((state) => startFrom(state, read.instrument, newId()));
      const problem = read.ok ? null : read.problems[0];
      setTrouble(
        problem === null ? null : (problem?.message ?? "The address holds no instrument."),
      );
      window.location.replace("#/layout");
    };
    void look();
    const changed = (): void => void look();
    addEventListener("hashchange", changed);
    return () => removeEventListener("hashchange", changed);
  }, [act]);
  return trouble;
}
