import type { Place } from "../geometry/polyline.ts";
import { type Phrase, phrase } from "./phrase.ts";
import { readTracingCsv } from "./tracing-csv.ts";
import { readingTracingSvg } from "./tracing-svg.ts";

/** A drawing as read: places in its own units. */
export interface TracingFile {
  readonly places: readonly Place[];
  /** mm in one unit, where the file says. */
  readonly unit: number | null;
  /** Whether its y runs down the page, as SVG's does. */
  readonly down: boolean;
  /** How many lines it holds; the longest was taken. */
  readonly lines: number;
}

export type TracingFileResult =
  | { readonly ok: true; readonly drawing: TracingFile }
  | { readonly ok: false; readonly why: Phrase };

/** Longer texts are no outline. */
const longest = 4_000_000;

/**
 * The outline a text holds: an SVG drawing, bare path data, or lines of x and y. Yields how much has been
 * read, 0 to 1, so that a long one can be left off.
 */
export function* readingTracingFile(text: string): Generator<number, TracingFileResult> {
  if (text.length > longest) return { ok: false, why: phrase`This is too long to be an outline.` };
  if (!/^\s*[<mM]/.test(text)) {
    const read = readTracingCsv(text);
    return read.ok
      ? { ok: true, drawing: { places: read.places, unit: null, down: false, lines: 1 } }
      : read;
  }
  const read = yield* readingTracingSvg(text);
  if (!read.ok) return read;
  const { places, unit, lines } = read;
  return { ok: true, drawing: { places, unit, down: true, lines } };
}
