import { deflateRawSync } from "node:zlib";
import fc from "fast-check";

/** What strangers put where a value should be. */
export const hostileValues: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e308,
  -1e308,
  5e-324,
  2 ** 53 + 2,
  0.1 + 0.2,
  "",
  "NaN",
  "Infinity",
  "-0",
  "<script>alert(1)</script>",
  '"><img src=x onerror=alert(1)>',
  "javascript:alert(1)",
  "\u202Eevil\u202C",
  "a\u200Bb\u200D\u2060\uFEFF",
  "\u0000\u0001\u001F\u007F",
  "\uD800",
  "م\u0300".repeat(500),
  "x".repeat(100_000),
  "__proto__",
  [],
  {},
  [[[[[[[[]]]]]]]],
  { __proto__: null, constructor: { prototype: { polluted: 1 } } },
  Array.from({ length: 3000 }, () => 0),
  Array.from({ length: 400 }, (_, i) => [i * 2, 100]),
  { toString: 1, valueOf: 2, length: 3, hasOwnProperty: 4 },
];

type Place = { readonly at: Record<string, unknown>; readonly key: string };

/** Every place of a JSON value where another could stand. */
function placesIn(value: unknown, found: Place[] = []): readonly Place[] {
  if (typeof value !== "object" || value === null) return found;
  const at = value as Record<string, unknown>;
  for (const key of Object.keys(at)) {
    found.push({ at, key });
    placesIn(at[key], found);
  }
  return found;
}

/** A sound JSON text with some of its values replaced, doubled under hostile names, or taken out. */
export const spoiled = (text: string): fc.Arbitrary<string> =>
  fc.array(fc.tuple(fc.nat(), fc.nat(), fc.nat(3)), { minLength: 1, maxLength: 4 }).map((acts) => {
    const json: unknown = JSON.parse(text);
    for (const [where, what, how] of acts) {
      const places = placesIn(json);
      const place = places[where % places.length];
      if (place === undefined) continue;
      if (how === 0) delete place.at[place.key];
      else
        place.at[how === 1 ? `${place.key}\u200B` : place.key] = structuredClone(
          hostileValues[what % hostileValues.length],
        );
    }
    return acts.length === 4 ? withPrototypeKey(JSON.stringify(json)) : JSON.stringify(json);
  });

/** One that cannot be set in a value, only written. */
const withPrototypeKey = (text: string): string =>
  text.replace('"name":', '"__proto__":{"polluted":1},"name":');

/** Bytes cut off, changed, put in and taken out. */
export const torn = (bytes: Buffer): fc.Arbitrary<Buffer> =>
  fc
    .array(fc.tuple(fc.nat(bytes.length - 1), fc.nat(255), fc.nat(3)), {
      minLength: 1,
      maxLength: 6,
    })
    .map((acts) =>
      acts.reduce((out, [raw, byte, act]) => {
        const at = raw % Math.max(1, out.length);
        const [before, after] = [out.subarray(0, at), out.subarray(at)];
        if (act === 0 && byte < 64) return before;
        if (act < 2) return Buffer.concat([before, Buffer.of(byte), after.subarray(1)]);
        if (act === 2) return Buffer.concat([before, Buffer.of(byte), after]);
        return Buffer.concat([before, after.subarray(byte % 40)]);
      }, bytes),
    );

/** JSON text as a shared address carries it. */
export const packed = (json: string): string => `1${deflateRawSync(json).toString("base64url")}`;

/** A shelf file with one item many times. */
export const many = (item: string, count: number): string =>
  `{"format":"rimwright-shelf","version":1,"instruments":[${Array(count).fill(item).join(",")}]}`;

/** Files that are large, deep, or in another encoding. */
export const bigFiles: readonly (readonly [string, () => Blob])[] = [
  ["50 MB", () => new Blob([" ".repeat(50_000_000)])],
  ["10 MB of brackets", () => new Blob(["[".repeat(5_000_000), "]".repeat(5_000_000)])],
  ["10 MB of brackets unclosed", () => new Blob(["[".repeat(9_999_999)])],
  ["10 MB of groups", () => new Blob([`[${"{},".repeat(3_300_000)}0]`])],
  ["10 MB of one text", () => new Blob([`"${"\\u0041".repeat(1_600_000)}"`])],
  ["10 MB of spaces", () => new Blob([" ".repeat(10_000_000)])],
  [
    "deep in one instrument",
    () => new Blob([many(`{"instrument":${'{"body":'.repeat(3e4)}0${"}".repeat(3e4)}}`, 1)]),
  ],
  [
    "one instrument of 240 kB of groups",
    () => new Blob([many(`{"instrument":[${"{},".repeat(163_000)}0]}`, 1)]),
  ],
  [
    "40 000 unknown tolerances",
    () =>
      new Blob([
        many(
          `{"instrument":{"tolerances":{${Array.from({ length: 40_000 }, (_, i) => `"t${i}":-1`).join(",")}}}}`,
          1,
        ),
      ]),
  ],
  [
    "4 900 unknown tolerances",
    () =>
      new Blob([
        many(
          `{"instrument":{"tolerances":{${Array.from({ length: 4900 }, (_, i) => `"t${i}":-1`).join(",")}}}}`,
          1,
        ),
      ]),
  ],
  [
    "2 400 unknown readings",
    () =>
      new Blob([
        many(
          `{"instrument":{},"asBuilt":{"readings":{${Array.from({ length: 2400 }, (_, i) => `"t${i}":{"value":1}`).join(",")}}}}`,
          1,
        ),
      ]),
  ],
  [
    "4 900 unknown changes",
    () =>
      new Blob([
        many(
          `{"instrument":{},"comparison":{"variants":[{"id":"a","name":"b","changes":{${Array.from({ length: 4900 }, (_, i) => `"t${i}":1`).join(",")}}}]}}`,
          1,
        ),
      ]),
  ],
  ["UTF-16, the other way round", () => new Blob([Buffer.from("\uFEFF{}", "utf16le").swap16()])],
  ["UTF-16 without a mark", () => new Blob([Buffer.from("{}", "utf16le")])],
  ["Latin-1", () => new Blob([Buffer.from('{"name":"Für"}', "latin1")])],
  ["half a UTF-16 pair", () => new Blob([Buffer.from("\uFEFF{}", "utf16le").subarray(0, 5)])],
  ["nothing", () => new Blob([])],
];

/** What short fragments unfold to, and how many instruments each holds. */
export const bombs: readonly (readonly [string, string, number])[] = [
  ["spaces", " ".repeat(14_000_000), 0],
  ["noughts in a text", `{"name":"${"0".repeat(14_000_000)}"}`, 0],
  ["brackets", "[".repeat(14_000_000), 0],
  ["brackets within the limit", `${"[".repeat(99_000)}${"]".repeat(99_000)}`, 0],
  // What is not known is left out: the rest is an instrument.
  ["groups within the limit", `${'{"body":'.repeat(20_000)}{}${"}".repeat(20_000)}`, 1],
  ["a bomb in a bomb", packed(" ".repeat(10_000_000)), 0],
];
