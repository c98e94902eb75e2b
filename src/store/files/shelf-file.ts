import { dequal as equal } from "dequal/lite";
import { type AsBuilt, emptyAsBuilt } from "../../instrument/as-built/as-built.ts";
import { fileForm, type InstrumentForm } from "../../instrument/file-form.ts";
import { variantInstrument } from "../../profile/comparison/variant.ts";
import { type Comparison, firstComparison } from "../document/comparison.ts";
import type { Document, Model } from "../document/state.ts";
import { modelForm } from "./document-form.ts";
import type { OwnedStick } from "./sticks-form.ts";

/** What a file holds of one instrument: not its texts as typed, nor its undo. */
export interface FileEntry {
  readonly instrument: InstrumentForm;
  /** The last instrument that had a plan, where this one has none. */
  readonly lastGood?: InstrumentForm;
  /** Left out where nothing was compared. */
  readonly comparison?: Comparison;
  /** Left out where nothing was measured. */
  readonly asBuilt?: AsBuilt;
  /** Whether it is a model; left out where it is none. */
  readonly model?: true;
  /** The model it was made from; left out where there was none. */
  readonly madeFrom?: Model;
}

export const shelfFormat = "rimwright-shelf";

export interface ShelfFile {
  readonly format: typeof shelfFormat;
  readonly version: 1;
  readonly instruments: readonly FileEntry[];
  /** The shop's sticks; left out where it has none. */
  readonly sticks?: readonly OwnedStick[];
}

export const fileVersion = 1;

/**
 * Largest file taken in, bytes; most instruments in one; most characters of one instrument: more than all
 * its notes come to at their longest, each sign of them written as six.
 */
export const fileLimits = {
  bytes: 10_000_000,
  instruments: 20_000,
  instrument: 1_500_000,
} as const;

/** A file of these instruments, all of them in it, and of these sticks. */
export const shelfFileOf = (
  kept: readonly { readonly document: Document }[],
  sticks: readonly OwnedStick[] = [],
): ShelfFile => ({
  format: shelfFormat,
  version: fileVersion,
  ...(sticks.length === 0 ? {} : { sticks }),
  instruments: kept.map(({ document }) => fileEntryOf(document)),
});

export function fileEntryOf(document: Document): FileEntry {
  const { instrument, lastGood, comparison, asBuilt } = document;
  const variants = comparison.variants.map((one) => variantInstrument(instrument, one));
  return {
    instrument: fileForm(instrument, variants),
    ...(equal(lastGood, instrument) ? {} : { lastGood: fileForm(lastGood, variants) }),
    ...(equal(comparison, firstComparison) ? {} : { comparison }),
    ...(equal(asBuilt, emptyAsBuilt) ? {} : { asBuilt }),
    ...modelForm(document),
  };
}
