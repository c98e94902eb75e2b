import { useEffect, useState } from "react";
import type { Place } from "../../geometry/polyline.ts";
import { type Phrase, phrase } from "../../instrument/phrase.ts";
import { readTracingCsv } from "../../instrument/tracing-csv.ts";

/** A drawing as read: places in its own units. */
export interface OutlineFile {
  readonly places: readonly Place[];
  /** mm in one unit, where the file says. */
  readonly unit: number | null;
  readonly lines: number;
}

export type OutlineFileResult =
  | { readonly ok: true; readonly drawing: OutlineFile }
  | { readonly ok: false; readonly why: Phrase };

/** Longer texts are no outline. */
const longest = 4_000_000;

/** What a text draws; null while there is none, or while the reader for SVG is being fetched. */
export function useOutlineFile(text: string): OutlineFileResult | null {
  const [read, setRead] = useState<OutlineFileResult | null>(null);
  useEffect(() => {
    let stale = false;
    setRead(null);
    if (text.trim() === "") return;
    void readOutlineFile(text).then((next) => {
      if (!stale) setRead(next);
    });
    return () => {
      stale = true;
    };
  }, [text]);
  return read;
}

async function readOutlineFile(text: string): Promise<OutlineFileResult> {
  if (text.length > longest) return { ok: false, why: phrase`This is too long to be an outline.` };
  if (!/^\s*[<mM]/.test(text)) {
    const read = readTracingCsv(text);
    return read.ok ? { ok: true, drawing: { places: read.places, unit: null, lines: 1 } } : read;
  }
  const { readTracingSvg } = await import("./tracing-svg.ts");
  const read = readTracingSvg(text);
  if (!read.ok) return read;
  const { places, unit, lines } = read;
  return { ok: true, drawing: { places, unit, lines } };
}
