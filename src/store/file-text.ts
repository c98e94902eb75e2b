import { asJson } from "./json.ts";
import { takeListApart } from "./list-text.ts";
import { fileLimits, fileVersion } from "./shelf-file.ts";

/** One instrument in a file: where, and its JSON text. */
export interface FilePiece {
  readonly path: string;
  readonly text: string;
  /** Whether it is an instrument alone, without what a shelf keeps with it. */
  readonly bare: boolean;
}

type Opened =
  | { readonly ok: true; readonly pieces: readonly FilePiece[] }
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
  const { format, version, instruments } = asJson(rest);
  if (format !== "rimwright-shelf") return { ok: true, pieces: [{ path: "", text, bare: true }] };
  if (typeof version === "number" && version > fileVersion)
    return refused("The file comes from a newer Rimwright; nothing was taken in.");
  if (version !== fileVersion)
    return refused("The file does not say which version of a shelf it is.");
  if (!Array.isArray(instruments) || instruments.length > 0)
    return refused("The file holds no list of instruments.");
  if (items.length > fileLimits.instruments)
    return refused(`The file holds more than ${fileLimits.instruments} instruments.`);
  const pieces = items.map((item, i) => ({ path: `instruments[${i}]`, text: item, bare: false }));
  return { ok: true, pieces };
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
