import { dequal as equal } from "dequal/lite";
import type { Document } from "../document/state.ts";
import { openFile } from "../files/file-text.ts";
import { type BadEntry, readFileEntry } from "../files/read-file-entry.ts";
import { fileEntryOf } from "../files/shelf-file.ts";
import type { OwnedStick } from "../files/sticks-form.ts";
import type { Session } from "./session.ts";
import type { Addition, Shelf } from "./shelf.ts";
import { newEntry } from "./shelf-entry.ts";
import { editShop, learnFrom } from "./shop.ts";
import { importSticks, newSticks } from "./sticks.ts";

/** What is to become of an instrument of the file that the shelf has otherwise: both kept, the shelf's replaced, or the file's left out. */
export type ClashChoice = "both" | "replace" | "skip";

/** An instrument that the shelf has under the same id with other content: a question to the builder. */
export interface Clash {
  /** Where it is in the file; tells one clash from another. */
  readonly path: string;
  readonly document: Document;
  readonly kept: { readonly name: string; readonly savedAt: number; readonly revision: number };
  /** In what they differ. */
  readonly differs: readonly ("numbers" | "variants" | "as-built record" | "model")[];
  readonly choice: ClashChoice;
}

/** What a file would bring to the shelf. Nothing is written yet. */
export interface ImportPlan {
  /** New to the shelf: these come in unasked. */
  readonly fresh: readonly Document[];
  /** How many the shelf has already, to the letter. */
  readonly same: number;
  readonly clashes: readonly Clash[];
  /** The file's sticks: those the shop has not come in unasked. */
  readonly sticks: readonly OwnedStick[];
  readonly bad: readonly BadEntry[];
}

export type ImportReading =
  | { readonly ok: true; readonly plan: ImportPlan }
  | { readonly ok: false; readonly reason: string };

/**
 * Reads what a file would bring to the shelf, and asks nothing yet: every clash keeps both until
 * `choose` says otherwise. Lets the page draw between instruments.
 */
export async function readImport(shelf: Shelf, file: Blob): Promise<ImportReading> {
  const opened = await openFile(file);
  if (!opened.ok) return opened;
  const cards = new Map((await shelf.cards()).map((card) => [card.id, card]));
  const seen = new Map<string, Document>();
  const plan = {
    fresh: [] as Document[],
    same: 0,
    clashes: [] as Clash[],
    sticks: opened.sticks.value,
    bad: opened.sticks.leftOut.map(({ path, reason }): BadEntry => ({ path, reason })),
  };
  const pause = pauses();
  for (const piece of opened.pieces) {
    await pause();
    const read = readFileEntry(piece);
    if (!read.ok) {
      plan.bad.push(...read.bad);
      continue;
    }
    const { document, leftOut } = read.value;
    plan.bad.push(...leftOut);
    const { id } = document.instrument;
    const [twin, card] = [seen.get(id), cards.get(id)];
    seen.set(id, document);
    const kept = twin ?? (card === undefined ? undefined : await shelf.document(id));
    if (id === "" || kept === undefined) plan.fresh.push(document);
    else if (alike(kept, document)) plan.same += 1;
    else if (twin !== undefined || card === undefined) plan.fresh.push(document);
    else {
      const { name, savedAt, revision } = card;
      const differs = differences(kept, document);
      plan.clashes.push({
        path: piece.path,
        document,
        kept: { name, savedAt, revision },
        differs,
        choice: "both",
      });
    }
  }
  return { ok: true, plan };
}

/** The plan with another choice for one clash; null: for all. */
export const choose = (plan: ImportPlan, path: string | null, choice: ClashChoice): ImportPlan => ({
  ...plan,
  clashes: plan.clashes.map((clash) =>
    path === null || clash.path === path ? { ...clash, choice } : clash,
  ),
});

/** What an import did. */
export interface ImportResult {
  /** How many came in, under an id of their own where theirs was taken. */
  readonly added: number;
  /** How many stand in the place of the shelf's own, which is one undo away. */
  readonly replaced: number;
  readonly skipped: number;
  readonly same: number;
  /** How many sticks were new to the shop. */
  readonly sticks: number;
  readonly bad: readonly BadEntry[];
}

/**
 * Brings a file to the shelf in one act: all of it, or, where the browser refuses, nothing. What has
 * changed on the shelf since it was read is not replaced: both are kept.
 */
export async function runImport(session: Session, plan: ImportPlan): Promise<ImportResult> {
  const { shelf, shop, tell, now } = session.parts;
  await session.flush();
  const additions = additionsOf(plan, now());
  const stood = await shelf.add(additions);
  const owned = shop.getState()?.sticks;
  const sticks = owned === undefined ? 0 : newSticks(owned, plan.sticks).length;
  editShop(shop, (all) => ({ ...all, sticks: importSticks(all.sticks, plan.sticks) }));
  editShop(shop, (all) =>
    stood.reduce(
      (so, { document: { lastGood, asBuilt } }) =>
        asBuilt.finished === null
          ? so
          : learnFrom(so, { instrument: lastGood, asBuilt, invented: false }),
      all,
    ),
  );
  const replaced = stood.filter(({ revision }) => revision > 0);
  // Of those new to the shelf one word is enough for the lists of other tabs.
  const news = [...replaced, ...stood.filter(({ revision }) => revision === 0).slice(-1)];
  for (const saved of news) {
    tell(saved);
    await session.onSaved(saved);
  }
  return {
    added: stood.length - replaced.length,
    replaced: replaced.length,
    skipped: plan.clashes.filter(({ choice }) => choice === "skip").length,
    same: plan.same,
    sticks,
    bad: plan.bad,
  };
}

function additionsOf({ fresh, clashes }: ImportPlan, now: number): readonly Addition[] {
  const free = fresh.map((document) => ({ entry: newEntry(document, now), replaces: null }));
  const asked = clashes.flatMap(({ document, kept, choice }) =>
    choice === "skip"
      ? []
      : [{ entry: newEntry(document, now), replaces: choice === "replace" ? kept.revision : null }],
  );
  return [...free, ...asked];
}

function differences(a: Document, b: Document): Clash["differs"] {
  const parts = [
    ["numbers", (document: Document) => [document.instrument, document.lastGood]],
    ["variants", (document: Document) => document.comparison],
    ["as-built record", (document: Document) => document.asBuilt],
    ["model", (document: Document) => [document.isModel, document.madeFrom]],
  ] as const;
  return parts.filter(([, part]) => !equal(part(a), part(b))).map(([name]) => name);
}

const alike = (a: Document, b: Document): boolean => equal(fileEntryOf(a), fileEntryOf(b));

/** Longest the page is held, ms. */
const longestHold = 30;

function pauses(): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < longestHold) return;
    await new Promise((go) => setTimeout(go));
    since = performance.now();
  };
}
