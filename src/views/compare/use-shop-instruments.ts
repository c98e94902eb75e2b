import { useEffect, useState } from "react";
import type { Instrument } from "../../instrument/instrument.ts";
import { presets } from "../../instrument/presets.ts";
import type { Shelf } from "../../store/shelf.ts";
import { useShelfSlot } from "../shelf-slot-context.ts";
import { useRimwright } from "../store-context.ts";

/** Most that one shim is looked for: with more, there is seldom one. */
const most = 20;

/** The instruments changed last on the shelf, besides the open one; the invented ones while there are none. */
export function useShopInstruments(): readonly Instrument[] {
  const slot = useShelfSlot();
  const shelf = slot.is === "open" ? slot.shelf : null;
  const open = useRimwright(({ instrument }) => instrument.id);
  const [kept, setKept] = useState<readonly Instrument[]>([]);
  useEffect(() => {
    if (shelf === null) return;
    let wanted = true;
    // A shelf that cannot be read says so in its own view.
    void latest(shelf, open).then(
      (found) => wanted && setKept(found),
      () => {},
    );
    return () => {
      wanted = false;
    };
  }, [shelf, open]);
  return kept.length > 0 ? kept : presets;
}

async function latest(shelf: Shelf, open: string): Promise<readonly Instrument[]> {
  const cards = (await shelf.cards()).filter(({ id }) => id !== open);
  const chosen = cards.toSorted((a, b) => b.savedAt - a.savedAt).slice(0, most);
  const works = await Promise.all(chosen.map(({ id }) => shelf.look(id)));
  return works.flatMap((work) => (work === undefined ? [] : [work.lastGood]));
}
