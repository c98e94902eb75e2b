import { useEffect, useRef, useState } from "react";
import type { FieldPath } from "../../instrument/fields.ts";
import { type Phrase, sayPhrase } from "../../instrument/phrase.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { rangePhrase } from "../../store/document/plan.ts";
import { workableRange } from "../../store/document/workable-range.ts";
import { useRimwright } from "../store-context.ts";
import { fieldId } from "./go-to-field.ts";
import { UseNearest } from "./use-nearest.tsx";

/** "… to … works here": what a field in trouble may be, found a moment after the trouble is on the screen. */
function useWorks(path: FieldPath): Phrase | null {
  const instrument = useRimwright((state) => state.instrument);
  const lastGood = useRimwright((state) => state.lastGood);
  const [works, setWorks] = useState<Phrase | null>(null);
  useEffect(() => {
    setWorks(null);
    const search = setTimeout(() => {
      const range = workableRange({ instrument, lastGood }, path);
      if (range !== null)
        setWorks([...rangePhrase(instrument, path, range), " works with the rest as it is."]);
    }, 60);
    return () => clearTimeout(search);
  }, [instrument, lastGood, path]);
  return works;
}

/** What is wrong with a field, what would work in it for this instrument, and a button that takes the nearest. */
export function TroubleTold({ path, trouble }: { path: FieldPath; trouble: Refusal }) {
  const units = useRimwright((state) => state.choices.units);
  const works = useWorks(path);
  const said = [trouble.why, ...(works === null ? [] : [works])]
    .map((part) => sayPhrase(part, units))
    .join(" ");
  const place = useRef<HTMLParagraphElement>(null);
  // What is said of the field being typed in must not lie below the edge.
  useEffect(() => {
    if (said !== "" && document.activeElement?.id === fieldId(path))
      place.current?.parentElement?.scrollIntoView({ block: "nearest" });
  }, [path, said]);
  return (
    <>
      <p ref={place}>{said}</p>
      {trouble.field === path && <UseNearest trouble={trouble} />}
    </>
  );
}
