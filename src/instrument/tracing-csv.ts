import type { Place } from "../geometry/polyline.ts";
import { count, type Phrase, phrase } from "./phrase.ts";
import { farthestPlace, mostPlaces } from "./tracing.ts";

export type ReadTracingResult =
  | { readonly ok: true; readonly places: readonly Place[] }
  | { readonly ok: false; readonly why: Phrase };

/** Nothing longer is a line of an outline, in characters. */
const longest = 1000;

/**
 * Places from lines of x and y, in the units of the drawing. Values may stand apart by comma, semicolon,
 * tab or space. A comma is a decimal mark beside semicolons and tabs, and in two values apart by a space
 * (`8,31 129,46`). A first line of words is a heading, and one that starts with # a remark.
 */
export function readTracingCsv(text: string): ReadTracingResult {
  const lines = text.split(/\r\n|\r|\n/, mostPlaces + 1);
  if (lines.length > mostPlaces)
    return { ok: false, why: phrase`This has more than ${count(mostPlaces)} lines.` };
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
  if (line.length > longest) return null;
  const [x, y] = valuesIn(line).map((value) =>
    /^[-+]?(\d+(\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(value) ? Number(value) : Number.NaN,
  );
  return x !== undefined && y !== undefined && isNear(x) && isNear(y) ? [x, y] : null;
}

const isNear = (value: number): boolean => Math.abs(value) <= farthestPlace;

function valuesIn(line: string): readonly string[] {
  const withPoint = (value: string): string => value.trim().replace(",", ".");
  if (/[;\t]/.test(line)) return line.split(/[;\t]/).map(withPoint);
  const spaced = line.split(/ +/);
  const decimalCommas =
    spaced.length === 2 && spaced.every((value) => /^[-+]?\d+(,\d+)?$/.test(value));
  return decimalCommas ? spaced.map(withPoint) : line.split(/\s*,\s*|\s+/);
}
