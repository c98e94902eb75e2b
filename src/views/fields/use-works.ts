import { useEffect, useState } from "react";
import type { FieldPath } from "../../instrument/field.ts";
import type { Phrase } from "../../instrument/phrase.ts";
import { rangePhrase } from "../../store/plan.ts";
import { workableRange } from "../../store/workable.ts";
import { useRimwright } from "../store-context.ts";

/** "… to … works here": what a field in trouble may be, found a moment after the trouble is on the screen. */
export function useWorks(path: FieldPath, wanted: boolean): Phrase | null {
  const instrument = useRimwright((state) => state.instrument);
  const lastGood = useRimwright((state) => state.lastGood);
  const [works, setWorks] = useState<Phrase | null>(null);
  useEffect(() => {
    setWorks(null);
    if (!wanted) return;
    const search = setTimeout(() => {
      const range = workableRange({ instrument, lastGood }, path);
      if (range !== null)
        setWorks([...rangePhrase(instrument, path, range), " works with the rest as it is."]);
    }, 60);
    return () => clearTimeout(search);
  }, [instrument, lastGood, path, wanted]);
  return wanted ? works : null;
}
