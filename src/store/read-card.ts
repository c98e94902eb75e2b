import { asJson } from "./json.ts";
import type { Card } from "./shelf-entry.ts";

/** A card from what a database holds: what cannot be read of it is as on a blank one. Null without an id to open it by. */
export function readCard(json: unknown): Card | null {
  const { id, name, savedAt, finished, revision, inFile } = asJson(json);
  if (typeof id !== "string") return null;
  return {
    id,
    name: typeof name === "string" ? name : "",
    savedAt: isTime(savedAt) ? savedAt : 0,
    finished: finished === true,
    revision: typeof revision === "number" ? revision : 0,
    inFile: typeof inFile === "number" ? inFile : null,
  };
}

/** Furthest a date reaches from 1970 either way, ms (ECMA-262, Time Values and Time Range). */
const furthest = 8.64e15;

const isTime = (value: unknown): value is number =>
  typeof value === "number" && Math.abs(value) <= furthest;
