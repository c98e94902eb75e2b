import { asJson, type Json } from "../document/json.ts";
import { readDocument, readHistory } from "../files/read-document.ts";
import type { TextStorage } from "./browser-storage.ts";
import { keptIn } from "./read-tab-copy.ts";
import type { UnreadableEntry } from "./shelf-database.ts";
import { tabKey } from "./tab-copy.ts";
import { validParts } from "./valid-parts.ts";

/** What of the tab's copy cannot be read, with the copy as it was; null where all of it can be. */
export function tabCopyDamage(storage: TextStorage): UnreadableEntry | null {
  const text = storage.getItem(tabKey);
  if (text === null) return null;
  try {
    return damageIn(keptIn(storage));
  } catch {
    return { id: "tab", json: text };
  }
}

function damageIn(kept: Json): UnreadableEntry | null {
  const document = readDocument(kept, validParts);
  if (document === null) return { id: "tab", json: kept };
  const { leftOut } = readHistory(kept["history"], validParts);
  const parts = [...document.leftOut, ...leftOut];
  const { id } = asJson(kept["instrument"]);
  return parts.length === 0
    ? null
    : { id: typeof id === "string" ? `${id} tab` : "tab", json: kept, parts };
}
