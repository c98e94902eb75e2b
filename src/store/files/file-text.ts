import { asJson } from "../document/json.ts";
import type { Mended } from "./leave-out.ts";
import { fileLimits, fileVersion, shelfFormat } from "./shelf-file.ts";
import { type OwnedStick, readSticks } from "./sticks-form.ts";

/** A JSON text with one of its lists apart: the rest, and each of the list's items as text. */
interface ListText {
  /** The text without the list's items. */
  readonly rest: string;
  readonly items: readonly string[];
}

/** Deepest nesting taken in. */
const deepest = 40;

/**
 * Takes the list under `key` of a JSON object's text apart without reading it, so that a large file can
 * be read item by item and no item can hold the page up. Null for a text that is cut short or nested
 * too deep. It does not find what else is wrong: whoever reads the pieces does.
 */
function takeListApart(text: string, key: string): ListText | null {
  const quoted = JSON.stringify(key);
  const items: string[] = [];
  let [list, end, from] = [-1, -1, -1];
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === quote) {
      const close = closingQuote(text, i);
      if (close < 0) return null;
      if (depth === 1 && list < 0 && text.startsWith(quoted, i)) list = listAfter(text, close + 1);
      i = close;
    } else if (code === openBrace || code === openBracket) {
      depth += 1;
      if (depth > deepest) return null;
      if (i === list) from = i + 1;
    } else if (code === closeBrace || code === closeBracket) {
      depth -= 1;
      if (from >= 0 && depth === 1) {
        const last = text.slice(from, i);
        if (items.length > 0 || last.trim() !== "") items.push(last);
        [end, from] = [i, -1];
      }
    } else if (code === comma && from >= 0 && depth === 2) {
      items.push(text.slice(from, i));
      from = i + 1;
    }
  }
  if (depth !== 0) return null;
  return { rest: end < 0 ? text : text.slice(0, list + 1) + text.slice(end), items };
}

const [quote, backslash, comma] = [34, 92, 44];
const [openBracket, closeBracket, openBrace, closeBrace] = [91, 93, 123, 125];

function closingQuote(text: string, open: number): number {
  for (let i = open + 1; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === backslash) i += 1;
    else if (code === quote) return i;
  }
  return -1;
}

/** Where the list after a colon begins; −1 when none does. */
function listAfter(text: string, from: number): number {
  const gap = /\s*:\s*\[/y;
  gap.lastIndex = from;
  return gap.test(text) ? gap.lastIndex - 1 : -1;
}

/** One instrument in a file: where, and its JSON text. */
export interface FilePiece {
  readonly path: string;
  readonly text: string;
  /** Whether it is an instrument alone, without what a shelf keeps with it. */
  readonly bare: boolean;
}

type Opened =
  | {
      readonly ok: true;
      readonly pieces: readonly FilePiece[];
      /** The shop's sticks, and which of them could not be read. */
      readonly sticks: Mended<readonly OwnedStick[]>;
    }
  /** Nothing of the file can be taken in. */
  | { readonly ok: false; readonly reason: string };

/** Opens a file: a whole shelf, or one instrument alone. It says what the file is, and reads no instrument yet. */
export async function openFile(file: Blob): Promise<Opened> {
  if (file.size > fileLimits.bytes)
    return refused(`The file is larger than ${fileLimits.bytes / 1e6} MB: nothing of it was read.`);
  const text = textOf(new Uint8Array(await file.arrayBuffer()));
  if (text === null) return refused("The file is not a text in UTF-8 or UTF-16.");
  const apart = takeListApart(text, "instruments");
  if (apart === null) return refused("The file is no JSON text, or is cut short.");
  if (apart.rest.length > fileLimits.instrument)
    return refused("The file holds too much to be an instrument or a shelf.");
  try {
    return opened(JSON.parse(apart.rest), apart.items, text);
  } catch {
    return refused("The file is no JSON text, or is cut short.");
  }
}

function opened(rest: unknown, items: readonly string[], text: string): Opened {
  if (typeof rest !== "object" || rest === null || Array.isArray(rest))
    return refused("The file holds neither an instrument nor a shelf.");
  const { format, version, instruments, sticks } = asJson(rest);
  if (format !== shelfFormat)
    return { ok: true, pieces: [{ path: "", text, bare: true }], sticks: readSticks(undefined) };
  if (typeof version === "number" && version > fileVersion)
    return refused("The file comes from a newer Rimwright; nothing was imported.");
  if (version !== fileVersion)
    return refused("The file does not say which version of a shelf it is.");
  if (!Array.isArray(instruments) || instruments.length > 0)
    return refused("The file holds no list of instruments.");
  if (items.length > fileLimits.instruments)
    return refused(`The file holds more than ${fileLimits.instruments} instruments.`);
  const pieces = items.map((item, i) => ({ path: `instruments[${i}]`, text: item, bare: false }));
  return { ok: true, pieces, sticks: readSticks(sticks) };
}

const refused = (reason: string): Opened => ({ ok: false, reason });

/** The text of a file's bytes: UTF-8, or UTF-16 with its mark in front. Null when it is neither. */
function textOf(bytes: Uint8Array): string | null {
  const [first, second] = bytes;
  const marked = { 65534: "utf-16le", 65279: "utf-16be" }[((first ?? 0) << 8) | (second ?? 0)];
  try {
    return new TextDecoder(marked ?? "utf-8", { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
