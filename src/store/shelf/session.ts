import { createStore, type StoreApi } from "zustand/vanilla";
import type { Store } from "../document/store.ts";
import { nothingToSave } from "../document/undo.ts";
import { atRest } from "./at-rest.ts";
import type { TextStorage } from "./browser-storage.ts";
import type { EarlyEdits } from "./left-early.ts";
import {
  firstSession,
  type KnownEntry,
  type Now,
  nextSession,
  readKnownEntries,
  type SavedMessage,
  type SessionEffect,
  type SessionEvent,
  type SessionState,
} from "./session-machine.ts";
import type { Shelf } from "./shelf.ts";
import type { Entry } from "./shelf-entry.ts";
import type { ShopStore } from "./shop.ts";

export interface Parts {
  readonly store: Store;
  /** What was edited before. */
  readonly early: EarlyEdits;
  readonly shop: ShopStore;
  readonly shelf: Shelf;
  /** Tells the other tabs. */
  readonly tell: (message: SavedMessage) => void;
  /** Where this tab finds after a reload what it saved last. */
  readonly storage: TextStorage;
  readonly now: () => number;
  /** Called once the builder's first change is on the shelf. */
  readonly firstSave: () => void;
}

/** What asks the shelf, and is answered by an event. */
type Request = Extract<SessionEffect, { readonly is: "find" | "save" | "fetch" }>;

const isRequest = (effect: SessionEffect): effect is Request =>
  effect.is === "find" || effect.is === "save" || effect.is === "fetch";

/** How long edits must rest before they are saved, and the longest that any waits, ms. */
const rest = 200;
const longest = 600;

const key = "rimwright-saved";

/**
 * Keeps the open instrument on the shelf: saves it a moment after each edit, and shows what other tabs
 * save of it. What is to be done is said by `nextSession`; this does it, one request of the shelf after another.
 */
export class Session {
  readonly state: StoreApi<SessionState>;
  readonly parts: Parts;
  readonly #waiting = atRest(() => void this.flush(), rest, longest);
  #requests: Promise<void> = Promise.resolve();
  /** While an entry is being shown, what changes on screen is no edit. */
  #showing = false;

  constructor(parts: Parts) {
    this.parts = parts;
    const { store, storage, early } = parts;
    this.state = createStore<SessionState>(() => firstSession(early.onScreen, loadKnown(storage)));
    store.subscribe((after, before) => {
      if (this.#showing || nothingToSave(after, before)) return;
      if (after.instrument.id === before.instrument.id) this.#send({ is: "edited" });
      else this.#later({ is: "left", before, now: this.#now() }).catch(() => {});
    });
  }

  /** Finds the entry of what is on screen, and saves or shows what is the later. Rejects where the shelf cannot be read. */
  start(): Promise<void> {
    const begun = this.#later({ is: "begun", left: this.parts.early.left, now: this.#now() });
    this.#noteShown();
    return begun;
  }

  /**
   * Opens an entry in place of what is on screen, which is saved first. False when there is none, and
   * when what is on screen could not be saved.
   */
  async open(id: string): Promise<boolean> {
    await this.flush();
    const { saving } = this.state.getState();
    if (saving === "refused" || saving === "superseded") return false;
    const entry = await this.parts.shelf.open(id);
    if (entry !== undefined) await this.#later({ is: "opened", entry, now: this.#now() });
    return entry !== undefined;
  }

  /** Follows another tab's save of what is on screen, unless there are edits of its own to save. */
  async onSaved(message: SavedMessage): Promise<void> {
    await this.#requests;
    await this.#later({ is: "told", message });
  }

  /**
   * Saves what waits to be saved, as soon as the shelf has answered what it was asked before: the answer may
   * bring what this is to be made from.
   */
  flush(): Promise<void> {
    return this.#next(() => this.#ask(this.#send({ is: "due", now: this.#now() })));
  }

  /** Puts what is on screen on the shelf, changed or not. */
  addToShelf(): void {
    this.#send({ is: "edited" });
  }

  /** Writes no more: a newer page owns the shelf. */
  supersede(): void {
    this.#send({ is: "superseded" });
  }

  #now(): Now {
    return { screen: this.parts.store.getState(), time: this.parts.now() };
  }

  /** Goes on by an event, and gives back what it asks of the shelf. */
  #send(event: SessionEvent): readonly Request[] {
    const [next, effects] = nextSession(this.state.getState(), event);
    this.state.setState(next, true);
    for (const effect of effects) if (!isRequest(effect)) this.#do(effect);
    return effects.filter(isRequest);
  }

  /** The same, and asks the shelf after what was asked before. */
  #later(event: SessionEvent): Promise<void> {
    const { id } = this.state.getState();
    const requests = this.#send(event);
    const answered = this.#next(() => this.#ask(requests));
    if (this.state.getState().id !== id) this.#noteShown();
    return answered;
  }

  /** Notes on the shelf what is on screen now, once what was asked before is done. */
  #noteShown(): void {
    const { id, run } = this.state.getState();
    const shown = { id, run, time: this.parts.now() };
    this.#next(() => this.parts.shelf.noteShown(shown)).catch(() => {});
  }

  #next(act: () => Promise<void>): Promise<void> {
    const answered = this.#requests.then(act);
    this.#requests = answered.catch(() => {});
    return answered;
  }

  async #ask(requests: readonly Request[]): Promise<void> {
    for (const request of requests) await this.#ask(this.#send(await this.#answer(request)));
  }

  async #answer(request: Request): Promise<SessionEvent> {
    const { shelf } = this.parts;
    if (request.is === "find")
      return { is: "found", entry: await shelf.open(request.id), now: this.#now() };
    if (request.is === "fetch") {
      const { message } = request;
      return { is: "fetched", message, entry: await shelf.open(message.id) };
    }
    return this.#save(request);
  }

  async #save({
    entry: ours,
    base,
  }: Extract<Request, { readonly is: "save" }>): Promise<SessionEvent> {
    try {
      const result = await this.parts.shelf.save(ours);
      return result.saved
        ? { is: "saved", entry: result.entry }
        : { is: "overtaken", theirs: result.theirs, ours, base, now: this.#now() };
    } catch {
      return { is: "refused", entry: ours };
    }
  }

  #do(effect: Exclude<SessionEffect, Request>): void {
    const { storage, tell, firstSave } = this.parts;
    if (effect.is === "wait") this.#waiting.edited();
    if (effect.is === "stop waiting") this.#waiting.stop();
    if (effect.is === "show") this.#show(effect.entry);
    if (effect.is === "remember") storeKnown(storage, this.state.getState().known);
    if (effect.is === "tell") tell(effect.message);
    if (effect.is === "first save") firstSave();
  }

  #show({ document, history, editId }: Entry): void {
    this.#showing = true;
    const shown = { ...document, ...history, editId: { ...editId } };
    this.parts.store.setState({ ...shown, lastChanged: null, undoStep: null });
    this.#showing = false;
  }
}

function loadKnown(storage: TextStorage): readonly KnownEntry[] {
  try {
    return readKnownEntries(JSON.parse(storage.getItem(key) ?? "null"));
  } catch {
    return [];
  }
}

/** Entries of which it is known after a reload as what they were last saved or shown. */
const mostKnown = 50;

function storeKnown(storage: TextStorage, known: readonly KnownEntry[]): void {
  const form = known
    .slice(-mostKnown)
    .map(({ id, revision, editId, from }) => ({ id, revision, stamp: editId, from }));
  try {
    storage.setItem(key, JSON.stringify(form));
  } catch {
    // Then a reload takes the shelf's word.
  }
}
