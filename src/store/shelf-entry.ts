import { type AsBuilt, emptyAsBuilt, readAsBuilt } from "../instrument/as-built.ts";
import type { Instrument } from "../instrument/instrument.ts";
import { type Comparison, firstComparison } from "./compare.ts";
import { readComparison } from "./compare-keep.ts";
import { asJson } from "./json.ts";
import { readHistory, readWork } from "./keep.ts";
import { type History, noHistory, type Work, workOn } from "./state.ts";

/** One instrument on the shelf, with all that is kept beside it. */
export interface Entry {
  /** The form of the record, for later versions of the page to tell. */
  readonly version: 1;
  /** The instrument's own. */
  readonly id: string;
  /** Grows by one with each save, whatever the clock says: tells which of two copies is the later. */
  readonly revision: number;
  /** When it was saved, to be shown; milliseconds since 1970. */
  readonly savedAt: number;
  readonly work: Work;
  readonly history: History;
  readonly comparison: Comparison;
  readonly asBuilt: AsBuilt;
}

/** What the shelf's list shows of an entry, small enough to read thousands at once. */
export interface Card {
  readonly id: string;
  readonly name: string;
  readonly savedAt: number;
  readonly finished: boolean;
}

export const cardOf = ({ id, savedAt, work, asBuilt }: Entry): Card => ({
  id,
  name: work.instrument.name,
  savedAt,
  finished: asBuilt.finished !== null,
});

/** The entry of an instrument new on the shelf. */
export function newEntry(instrument: Instrument, savedAt: number): Entry {
  return {
    version: 1,
    id: instrument.id,
    revision: 0,
    savedAt,
    work: workOn(instrument),
    history: noHistory,
    comparison: firstComparison,
    asBuilt: emptyAsBuilt,
  };
}

/** An entry from what a database holds; null when its instrument or its record cannot be read. */
export function readEntry(json: unknown): Entry | null {
  const { version, id, revision, savedAt, work, history, comparison, asBuilt } = asJson(json);
  const read = readWork(asJson(work));
  const record = readAsBuilt(asBuilt);
  if (version !== 1 || typeof id !== "string" || read === null || !record.ok) return null;
  return {
    version,
    id,
    revision: typeof revision === "number" ? revision : 0,
    savedAt: typeof savedAt === "number" ? savedAt : 0,
    work: read,
    history: readHistory(history),
    comparison: readComparison(comparison),
    asBuilt: record.asBuilt,
  };
}
