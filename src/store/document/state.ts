import { type AsBuilt, emptyAsBuilt } from "../../instrument/as-built/as-built.ts";
import type { MeasurementKey } from "../../instrument/as-built/measurement-fields.ts";
import { defaultInstrument } from "../../instrument/default-instrument.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { type FieldGroup, fieldGroups } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { type Comparison, firstComparison } from "./comparison.ts";
import { type EditId, noEditId } from "./edit-id.ts";

/** A text as typed, and the units shown while it was: a bare number means something else in others. */
export interface TypedText {
  readonly text: string;
  readonly units: Units;
}

export type MeasurementTexts = Readonly<Partial<Record<MeasurementKey, TypedText>>>;

/** A design that instruments are made from: its instrument's id, and its name when one was made. */
export interface Model {
  readonly id: string;
  readonly name: string;
}

/** What the builder has in hand: one instrument with all that belongs to it, and the texts it was stated in. */
export interface Document {
  /** What the fields say now, number by number. It may not go together, or have no profile. */
  readonly instrument: Instrument;
  /** The last instrument that had a profile: it is drawn while the present one has none. */
  readonly lastGood: Instrument;
  /** What was typed and not changed since, readable or not. */
  readonly texts: Readonly<Partial<Record<FieldPath, TypedText>>>;
  /** The number a field had before it was made null, such as the dish radius before "none". */
  readonly lastNumbers: Readonly<Partial<Record<FieldPath, number>>>;
  /** Its variants, and what is plotted of them. */
  readonly comparison: Comparison;
  readonly asBuilt: AsBuilt;
  /** What was typed into the record's fields, readable or not. */
  readonly readingTexts: MeasurementTexts;
  /** Whether it is a design to make instruments from, and no instrument itself. */
  readonly isModel: boolean;
  /** The design it was made from; null where it was made from none. */
  readonly madeFrom: Model | null;
}

export const stretches = [1, 5, 10] as const;

/** How much taller than long the section is drawn. */
export type Stretch = (typeof stretches)[number];

export interface Choices {
  readonly units: Units;
  readonly stretch: Stretch;
  /** Drawn as it lies on the board: top down, shim under the tail. */
  readonly turned: boolean;
  readonly folded: readonly FieldGroup[];
  /** Whether this is no first visit, or its questions are done with. */
  readonly introduced: boolean;
}

/** One step of undo: what was done, and where. Edits in a row of one name at one place are one step; at no place (null), each is its own. */
export interface UndoStep {
  readonly name: string;
  readonly at: string | null;
}

export const undoStep = (name: string, at: string | null = null): UndoStep => ({ name, at });

/** Steps that can be taken back. Each is the document as it was before the step. */
export interface History {
  /** Oldest first. */
  readonly past: readonly Document[];
  /** What was taken back, the next to be done again first. */
  readonly future: readonly Document[];
}

export interface State extends Document, History {
  readonly choices: Choices;
  /** What the last "start from" put away, to be put back; null when nothing was. */
  readonly previous: Document | null;
  /** The field whose value was changed last. */
  readonly lastChanged: FieldPath | null;
  /** What the last edit was; null where none can be joined. */
  readonly undoStep: UndoStep | null;
  /** This visit's own name, and the edit that had made the document it began with. */
  readonly run: string;
  readonly initialEditId: EditId;
  /** Which edit made the document. */
  readonly editId: EditId;
}

export const firstChoices: Choices = {
  units: "mm",
  stretch: 5,
  turned: false,
  introduced: false,
  folded: fieldGroups.map(([group]) => group).filter((group) => group !== "bench"),
};

export const noHistory: History = { past: [], future: [] };

export const firstState: State = {
  ...newDocument(defaultInstrument),
  ...noHistory,
  choices: firstChoices,
  previous: null,
  lastChanged: null,
  undoStep: null,
  run: "",
  initialEditId: noEditId,
  editId: noEditId,
};

/** A fresh start on an instrument that has a profile: no variants, nothing measured. */
export function newDocument(instrument: Instrument): Document {
  return {
    instrument,
    lastGood: instrument,
    texts: {},
    lastNumbers: {},
    comparison: firstComparison,
    asBuilt: emptyAsBuilt,
    readingTexts: {},
    isModel: false,
    madeFrom: null,
  };
}
