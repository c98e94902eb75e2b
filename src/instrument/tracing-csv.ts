import type { Place } from "../geometry/polyline.ts";
import { count, type Phrase, phrase } from "./phrase.ts";

export type ReadTracingResult =
  | { readonly ok: true; readonly places: readonly Place[] }
  | { readonly ok: false; readonly why: Phrase };

/** More lines than this are no outline. */
const most = 20_000;

/**
 * Places from lines of x and y, in the units of the drawing. Values may stand apart by comma, semicolon,
 * tab or space; beside semicolons and tabs a comma is a decimal mark. A first line of words is a heading,
 * and one that starts with # a remark.
 */
export function readTracingCsv(text: string): ReadTracingResult {
  const lines = text.split(/\r\n|\r|\n/, most + 1);
  if (lines.length > most)
    return { ok: false, why: phrase`This has more than ${count(most)} lines.` };
  const places: Place[] = [];
  for (const [i, line] of lines.entries()) {
    const plain = line.trim();
    if (plain === "" || plain.startsWith("#")) continue;
    const place = readLine(plain);
    if (place !== null) places.push(place);
    else if (places.length > 0 || /^[-+.\d]/.test(plain)) {
      return { ok: false, why: phrase`Line ${count(i + 1)} does not hold an x and a y.` };
    }
  }
  return { ok: true, places };
}

function readLine(line: string): Place | null {
  const apart = /[;\t]/.test(line);
  const parts = apart
    ? line.split(/[;\t]/).map((part) => part.trim().replace(",", "."))
    : line.split(/\s*,\s*|\s+/);
  const [x, y] = parts.map((part) =>
    /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(part) ? Number(part) : Number.NaN,
  );
  return x !== undefined && y !== undefined && Number.isFinite(x) && Number.isFinite(y)
    ? [x, y]
    : null;
}
