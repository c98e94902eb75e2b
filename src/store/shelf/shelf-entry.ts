import { type EditId, noEditId, readEditId } from "../document/edit-id.ts";
import { asJson, type Json } from "../document/json.ts";
import { type Document, type History, noHistory } from "../document/state.ts";
import { documentForm, historyForm } from "../files/document-form.ts";
import type { Mended } from "../files/leave-out.ts";
import { entryFromOne } from "../files/migrations.ts";
import { readDocument, readHistory } from "../files/read-document.ts";
import { validParts } from "./valid-parts.ts";

/** A card from what a database holds: what cannot be read of it is as on a blank one. Null without an id to open it by. */
export function readCard(json: unknown): Card | null {
  const { id, name, savedAt, finished, revision, inFile, isModel, madeFrom } = asJson(json);
  if (typeof id !== "string") return null;
  return {
    id,
    name: typeof name === "string" ? name : "",
    savedAt: isTime(savedAt) ? savedAt : 0,
    finished: finished === true,
    revision: typeof revision === "number" ? revision : 0,
    inFile: typeof inFile === "number" ? inFile : null,
    ...(isModel === true ? { isModel } : {}),
    ...(typeof madeFrom === "string" ? { madeFrom } : {}),
  };
}

/** Furthest a date reaches from 1970 either way, ms (ECMA-262, Time Values and Time Range). */
const furthest = 8.64e15;

const isTime = (value: unknown): value is number =>
  typeof value === "number" && Math.abs(value) <= furthest;

/** One instrument on the shelf, with all that belongs to it. */
export interface Entry {
  /** The form of the record, for later versions of the page to tell. */
  readonly version: 2;
  /** The instrument's own. */
  readonly id: string;
  /** Grows by one with each save, whatever the clock says: tells which of two copies is the later. */
  readonly revision: number;
  /** When it was saved, to be shown; milliseconds since 1970. */
  readonly savedAt: number;
  /** The edit that made the document, of the visit that saved it. */
  readonly editId: EditId;
  readonly document: Document;
  readonly history: History;
}

/** What the shelf's list shows of an entry, small enough to read thousands at once. */
export interface Card {
  readonly id: string;
  readonly name: string;
  readonly savedAt: number;
  readonly finished: boolean;
  readonly revision: number;
  /** The revision last put into a file; null while none was. */
  readonly inFile: number | null;
  /** Left out where it is no model. */
  readonly isModel?: true;
  /** The id of the model it was made from; left out where there was none. */
  readonly madeFrom?: string;
}

export const cardOf = (
  { id, savedAt, revision, document }: Entry,
  inFile: Card["inFile"] = null,
): Card => ({
  id,
  name: document.instrument.name,
  savedAt,
  finished: document.asBuilt.finished !== null,
  revision,
  inFile,
  ...(document.isModel ? { isModel: true } : {}),
  ...(document.madeFrom === null ? {} : { madeFrom: document.madeFrom.id }),
});

/** The instruments on a shelf that were made from a model. */
export const madeFrom = (cards: readonly Card[], model: string): readonly Card[] =>
  cards.filter((card) => card.madeFrom === model);

/** Whether an instrument has changes that are in no file. */
export const isInNoFile = ({ revision, inFile }: Card): boolean => revision !== inFile;

/** The entry of what is new on the shelf. */
export const newEntry = (document: Document, savedAt: number): Entry => ({
  version: 2,
  id: document.instrument.id,
  revision: 0,
  savedAt,
  editId: noEditId,
  document,
  history: noHistory,
});

/** An entry as the database holds it: in the names of the form's version 2. */
export const entryForm = ({ document, editId, history, ...entry }: Entry) => ({
  ...entry,
  stamp: editId,
  work: documentForm(document),
  history: historyForm(history),
});

export type StoredEntry = ReturnType<typeof entryForm>;

/** An entry from what a database holds, without the parts of it that cannot be read; null when its instrument cannot be. */
export const readEntry = (json: unknown): Entry | null => readMendedEntry(json)?.value ?? null;

/** The same, with what was left out. */
export function readMendedEntry(json: unknown): Mended<Entry> | null {
  const kept = upToDate(json);
  const document = storedDocumentIn(kept);
  const { id } = kept;
  if (document === null || typeof id !== "string") return null;
  const history = readHistory(kept["history"], validParts);
  return {
    value: entryOf(kept, id, document.value, history.value),
    leftOut: [...document.leftOut, ...history.leftOut],
  };
}

function entryOf(kept: Json, id: string, document: Document, history: History): Entry {
  const { revision, savedAt, stamp } = kept;
  return {
    version: 2,
    id,
    revision: typeof revision === "number" ? revision : 0,
    savedAt: typeof savedAt === "number" ? savedAt : 0,
    editId: readEditId(stamp),
    document,
    history,
  };
}

/** An entry's document alone: its history is most of it, and takes most of the time to read. */
export const readEntryDocument = (json: unknown): Document | null =>
  storedDocumentIn(upToDate(json))?.value ?? null;

const storedDocumentIn = ({ version, work }: Json): Mended<Document> | null =>
  version === 2 ? readDocument(asJson(work), validParts) : null;

const upToDate = (json: unknown): Json => {
  const kept = asJson(json);
  return kept["version"] === 1 ? entryFromOne(kept) : kept;
};
