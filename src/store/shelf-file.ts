import { type AsBuilt, emptyAsBuilt, readAsBuilt } from "../instrument/as-built.ts";
import type { Instrument } from "../instrument/instrument.ts";
import { readInstrument } from "../instrument/read-instrument.ts";
import { type Comparison, firstComparison } from "./compare.ts";
import { readComparison } from "./compare-keep.ts";
import { asJson } from "./json.ts";
import type { Entry } from "./shelf-entry.ts";

/** What a file holds of one instrument: not its texts as typed, nor its undo. */
export interface Exported {
  readonly instrument: Instrument;
  readonly comparison: Comparison;
  readonly asBuilt: AsBuilt;
}

export interface ShelfFile {
  readonly format: "rimwright-shelf";
  readonly version: 1;
  readonly instruments: readonly Exported[];
}

/** A place in the file that could not be taken in, and why. */
export interface BadEntry {
  readonly path: string;
  readonly reason: string;
}

export type FileReading =
  | { readonly ok: true; readonly read: readonly Exported[]; readonly bad: readonly BadEntry[] }
  /** Nothing of the file can be taken in. */
  | { readonly ok: false; readonly reason: string };

/** Largest file taken in, bytes, and most instruments in one. */
export const fileLimits = { bytes: 20_000_000, instruments: 20_000 } as const;

const fileVersion = 1;

export function shelfFileOf(entries: readonly Entry[]): ShelfFile {
  const instruments = entries.map(({ work, comparison, asBuilt }) => ({
    instrument: work.instrument,
    comparison,
    asBuilt,
  }));
  return { format: "rimwright-shelf", version: fileVersion, instruments };
}

/** A file's text taken in: a whole shelf, or one instrument alone. Good entries come in beside the reasons for the bad ones. */
export function readShelfFile(text: string): FileReading {
  if (text.length > fileLimits.bytes) return refused("The file is larger than 20 MB.");
  let json: unknown;
  try {
    // A byte order mark may stand in front.
    json = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    return refused("The file is not JSON text.");
  }
  return asJson(json)["format"] === "rimwright-shelf" ? readShelf(json) : readAlone(json);
}

function readAlone(json: unknown): FileReading {
  if (Array.isArray(json) || typeof json !== "object" || json === null) {
    return refused("The file holds neither an instrument nor a shelf.");
  }
  const read = readInstrument(json);
  if (!read.ok) return { ok: true, read: [], bad: read.problems.map(badAt("")) };
  return {
    ok: true,
    read: [{ instrument: read.instrument, comparison: firstComparison, asBuilt: emptyAsBuilt }],
    bad: [],
  };
}

function readShelf(json: unknown): FileReading {
  const { version, instruments } = asJson(json);
  if (typeof version !== "number" || version > fileVersion) {
    return refused("The file comes from a newer Rimwright; nothing was taken in.");
  }
  if (!Array.isArray(instruments)) return refused("The file holds no list of instruments.");
  if (instruments.length > fileLimits.instruments) {
    return refused(`The file holds more than ${fileLimits.instruments} instruments.`);
  }
  const read: Exported[] = [];
  const bad: BadEntry[] = [];
  instruments.forEach((one: unknown, i) => {
    const { instrument, comparison, asBuilt } = asJson(one);
    const stated = readInstrument(instrument);
    const record =
      asBuilt === undefined ? { ok: true as const, asBuilt: emptyAsBuilt } : readAsBuilt(asBuilt);
    const path = `instruments[${i}]`;
    if (!stated.ok) bad.push(...stated.problems.map(badAt(`${path}.instrument`)));
    else if (!record.ok) bad.push(...record.problems.map(badAt(`${path}.asBuilt`)));
    else {
      read.push({
        instrument: stated.instrument,
        comparison: readComparison(comparison),
        asBuilt: record.asBuilt,
      });
    }
  });
  return { ok: true, read, bad };
}

const refused = (reason: string): FileReading => ({ ok: false, reason });

const badAt =
  (place: string) =>
  ({ path, message }: { readonly path: string; readonly message: string }): BadEntry => ({
    path: place !== "" && path !== "" ? `${place}.${path}` : place + path,
    reason: message,
  });
