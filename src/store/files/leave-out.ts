import type { Problem } from "../../instrument/problem.ts";
import { asJson, type Json } from "../document/json.ts";

/** A part of what was stored that could not be read: it alone was left out. */
export interface LeftOut {
  /** Such as `"tolerances.dome.flatLength"`. */
  readonly path: string;
  readonly reason: string;
  /** As it was found. */
  readonly value: unknown;
}

type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface Mended<T> {
  readonly value: T;
  readonly leftOut: readonly LeftOut[];
}

/** Most times that leaving something out may bring out what else is wrong. */
const mostRounds = 4;

/**
 * What `read` makes of `json` once each part that has a problem is left out, or stands as `beside` has it. Null
 * where a problem is one of the whole, as `isWhole` says of its place.
 */
export function readMended<T>(
  json: unknown,
  read: (json: unknown) => Read<T>,
  { beside, isWhole }: { readonly beside?: unknown; readonly isWhole: (path: string) => boolean },
): Mended<T> | null {
  const leftOut: LeftOut[] = [];
  let mended = json;
  for (let round = 0; round <= mostRounds; round++) {
    const result = read(mended);
    if (result.ok) return { value: result.value, leftOut };
    if (result.problems.some(({ path }) => path === "" || isWhole(path))) return null;
    const found = mended;
    const places = result.problems.map(({ path, message }) => {
      const keys = keysAlong(found, path);
      return { keys, part: { path: keys.join("."), reason: message, value: valueAt(found, keys) } };
    });
    const first = new Map(places.map((place) => [place.part.path, place]));
    // Of a list the last first: what is taken out moves those behind it up.
    for (const { keys, part } of [...first.values()].reverse()) {
      if (part.value === undefined) continue;
      leftOut.unshift(part);
      const other = round === 0 ? valueAt(beside, keys) : undefined;
      mended = withAt(mended, keys, other === part.value ? undefined : other);
    }
  }
  return null;
}

/** The keys a dotted path goes along to its part: some keys, such as a tolerance's, have dots of their own. To what holds it where there is none. */
function keysAlong(json: unknown, path: string): readonly string[] {
  const keys: string[] = [];
  let [node, rest] = [json, path];
  while (rest !== "" && typeof node === "object" && node !== null) {
    const from = rest;
    const key = Object.keys(node)
      .filter((one) => from === one || from.startsWith(`${one}.`))
      .sort((a, b) => b.length - a.length)[0];
    if (key === undefined) break;
    keys.push(key);
    node = asJson(node)[key];
    rest = rest.slice(key.length + 1);
  }
  return keys;
}

const valueAt = (json: unknown, keys: readonly string[]): unknown =>
  keys.length === 0
    ? undefined
    : keys.reduce<unknown>(
        (node, key) => (Object.hasOwn(asJson(node), key) ? asJson(node)[key] : undefined),
        json,
      );

/** `json` with another value at the end of `keys`; undefined: with none. */
function withAt(json: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(json)) {
    if (rest.length === 0 && value === undefined) return json.filter((_, i) => String(i) !== key);
    return json.map((one, i) => (String(i) === key ? withAt(one, rest, value) : one));
  }
  const { [key]: old, ...others }: Json = asJson(json);
  const next = withAt(old, rest, value);
  return next === undefined ? others : { ...others, [key]: next };
}
