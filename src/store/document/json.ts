export type Json = { readonly [key: string]: unknown };

/** An object to look keys up in, from any value: an empty one from what is no object. */
export function asJson(value: unknown): Json {
  return typeof value === "object" && value !== null ? (value as Json) : {};
}
