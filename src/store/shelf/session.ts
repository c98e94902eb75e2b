import { createStore } from "zustand/vanilla";
import { noStamp, ofOneRun, type Stamp, sameStamp } from "../document/stamp.ts";
import type { State } from "../document/state.ts";
import type { Store } from "../document/store.ts";
import { nothingToSave, workIn } from "../document/undo.ts";
import type { TextStorage } from "./browser-storage.ts";
import { KnownSaves } from "./known-saves.ts";
import { metBy } from "./met-by.ts";
import type { Shelf } from "./shelf.ts";
import type { Entry } from "./shelf-entry.ts";
import type { ShopStore } from "./shop.ts";
import { storedHistory } from "./tab-copy.ts";

/** How what is on screen stands to the shelf. */
type Saving =
  | "saved"
  /** Not on the shelf: an instrument comes there with its first change, or when it is told to. */
  | "new"
  | "saving"
  /** The browser would not take it: it is kept in this tab, and tried again at the next edit. */
  | "refused"
  /** A newer page has taken the shelf over: this one writes no more. */
  | "superseded";

export interface SessionState {
  readonly saving: Saving;
  /** Another tab saved this instrument at the same moment: theirs is shown, and ours is one undo away. */
  readonly met: boolean;
}

/** Word between tabs that an entry has been saved. */
export interface Saved {
  readonly id: string;
  readonly revision: number;
}

export interface Parts {
  readonly store: Store;
  readonly shop: ShopStore;
  readonly shelf: Shelf;
  readonly tell: (saved: Saved) => void;
  /** What this tab knows it saved last, over a reload. */
  readonly storage: TextStorage;
  readonly now: () => number;
  /** Told once the builder's first change is on the shelf. */
  readonly settled: () => void;
}

/** From an edit to its saving, ms. */
const pause = 200;

/** Keeps the open instrument on the shelf: saves it a moment after each edit, and takes in what other tabs save of it. */
export class Session {
  readonly state = createStore<SessionState>(() => ({ saving: "new", met: false }));
  readonly parts: Parts;
  /** Of the entry that what is on screen was made from; 0 for an instrument not yet on the shelf. */
  #revision = 0;
  #waiting: ReturnType<typeof setTimeout> | null = null;
  #writing: Promise<void> = Promise.resolve();
  /** Instruments left before the browser would take them: tried again with the next. */
  readonly #owed = new Map<string, Entry>();
  readonly #known: KnownSaves;
  /** What was on screen when this visit began, and may still be on its way to the shelf from the last. */
  #base: Stamp = noStamp;
  /** While an entry is being shown, what changes on screen is no edit. */
  #showing = false;
  #settled = false;

  constructor(parts: Parts) {
    this.parts = parts;
    this.#known = new KnownSaves(parts.storage);
    parts.store.subscribe((after, before) => this.#watchWork(after, before));
  }

  /**
   * Finds the entry of what is on screen. What this tab had not saved yet is saved now; where another
   * has saved since, theirs is shown. `from` had made the work when it came on screen: edits may have
   * been made before the shelf was open.
   */
  async start(from = this.parts.store.getState().began): Promise<void> {
    this.#base = from;
    const entry = await this.parts.shelf.open(this.#id());
    if (entry === undefined || entry.id !== this.#id()) return;
    const state = this.parts.store.getState();
    const work = workIn(state);
    const same = JSON.stringify(entry.work) === JSON.stringify(work);
    if (same && sameStamp(entry.stamp, state.stamp)) {
      this.#remember(entry);
      this.state.setState({ saving: "saved" });
    } else if (this.#isOurs(entry, state.stamp) || this.#isBehind(entry.stamp, state.stamp)) {
      this.#revision = entry.revision;
      this.#edited();
    } else if (ofOneRun(entry.stamp, state.stamp) || this.#isSaved(entry.id, state.stamp))
      this.#show(entry);
    else this.#meet(entry, this.#entryOf(state, this.#revision));
  }

  /** Whether what is on screen goes on from an entry that nobody else has saved since. */
  #isOurs({ id, revision, stamp }: Entry, ours: Stamp): boolean {
    return ofOneRun(stamp, ours)
      ? ours.edit >= stamp.edit
      : revision <= this.#known.of(id).revision;
  }

  /** Whether what is on screen holds nothing that was not saved. */
  #isSaved(id: string, ours: Stamp): boolean {
    return ours.edit === 0 || sameStamp(ours, this.#known.of(id).stamp);
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
    if (entry !== undefined) this.#show(entry);
    return entry !== undefined;
  }

  /** Another tab has saved an entry: the one on screen follows it, unless it has edits of its own to save. */
  async hear({ id, revision }: Saved): Promise<void> {
    if (id !== this.#id()) return;
    await this.#writing;
    const isNews = (): boolean =>
      id === this.#id() && revision > this.#revision && this.#waiting === null;
    const entry = isNews() ? await this.parts.shelf.open(id) : undefined;
    const { met } = this.state.getState();
    if (entry === undefined || !isNews()) return;
    this.#show(entry);
    this.state.setState({ met });
  }

  /** Saves at once what waits to be saved. */
  async flush(): Promise<void> {
    if (this.#waiting !== null) {
      clearTimeout(this.#waiting);
      this.#waiting = null;
      const entry = this.#entryOf(this.parts.store.getState(), this.#revision);
      this.#writing = this.#writing.then(() => this.#save(entry));
    }
    await this.#writing;
  }

  /** Puts what is on screen on the shelf, changed or not. */
  keep(): void {
    this.#edited();
  }

  /** Writes no more: a newer page owns the shelf. */
  supersede(): void {
    if (this.#waiting !== null) clearTimeout(this.#waiting);
    this.#waiting = null;
    this.state.setState({ saving: "superseded" });
  }

  #id(): string {
    return this.parts.store.getState().instrument.id;
  }

  #run(): string {
    return this.parts.store.getState().run;
  }

  #watchWork(after: State, before: State): void {
    if (this.#showing) return;
    if (nothingToSave(after, before)) return;
    if (after.instrument.id === before.instrument.id) this.#edited();
    else void this.#leave(before);
  }

  /** Another instrument came on screen by the page's own act: what was left is saved as it was. */
  async #leave(before: State): Promise<void> {
    if (this.#waiting !== null) {
      clearTimeout(this.#waiting);
      const left = this.#entryOf(before, this.#revision);
      this.#writing = this.#writing.then(() => this.#save(left));
    }
    this.#revision = 0;
    this.#waiting = null;
    if (this.state.getState().saving === "superseded") return;
    this.state.setState({ saving: "new", met: false });
    // What was put back may be on the shelf.
    this.#writing = this.#writing
      .then(() => this.start(this.parts.store.getState().stamp))
      .catch(() => {});
    await this.#writing;
  }

  #edited(): void {
    if (this.#showing || this.state.getState().saving === "superseded") return;
    this.state.setState({ saving: "saving", met: false });
    this.#waiting ??= setTimeout(() => void this.flush(), pause);
  }

  async #save(entry: Entry): Promise<void> {
    if (this.state.getState().saving === "superseded") return;
    const owed = [...this.#owed.values()].filter(({ id }) => id !== entry.id);
    try {
      for (const one of [...owed, entry]) await this.#saveOne(one);
    } catch {
      this.state.setState({ saving: "refused" });
    }
  }

  async #saveOne(entry: Entry): Promise<void> {
    const { id } = entry;
    const ours = id === this.#id();
    this.#owed.set(id, entry);
    const result = await this.parts.shelf.save(
      ours ? { ...entry, revision: this.#revision } : entry,
    );
    this.#owed.delete(id);
    if (!result.saved) {
      if (ours && this.#isBehind(result.theirs.stamp, entry.stamp)) {
        this.#revision = result.theirs.revision;
        await this.#saveOne(entry);
      } else if (ours) this.#meet(result.theirs, entry);
      else await this.#saveOne(metBy(result.theirs, entry, this.#run()));
      return;
    }
    if (ours) this.#remember(result.entry);
    else this.#known.note(result.entry);
    this.parts.tell({ id, revision: result.entry.revision });
    if (ours && this.#waiting === null) this.state.setState({ saving: "saved" });
    if (!this.#settled) this.parts.settled();
    this.#settled = true;
  }

  /** Whether what another save left is only an earlier state of ours. */
  #isBehind(theirs: Stamp, ours: Stamp): boolean {
    return [ours, this.#base].some((one) => ofOneRun(one, theirs) && one.edit >= theirs.edit);
  }

  /** Two tabs have changed it: the other's stands, and what is on screen here is one undo away, on the shelf too. */
  #meet(theirs: Entry, ours: Entry): void {
    const both = metBy(theirs, ours, this.#run());
    this.#show(both);
    if (both === theirs) return;
    this.#edited();
    this.state.setState({ met: true });
  }

  #remember(entry: Entry): void {
    this.#revision = entry.revision;
    this.#known.noteOverReload(entry);
  }

  #entryOf(state: State, revision: number): Entry {
    return {
      version: 2,
      id: state.instrument.id,
      revision,
      savedAt: this.parts.now(),
      stamp: state.stamp,
      work: workIn(state),
      history: storedHistory(state),
    };
  }

  #show(entry: Entry): void {
    const { work, history, stamp } = entry;
    this.#showing = true;
    const shown = { ...work, ...history, stamp: { ...stamp } };
    this.parts.store.setState({ ...shown, lastChanged: null, undoStep: null });
    this.#showing = false;
    this.#remember(entry);
    this.state.setState({ saving: "saved", met: false });
  }
}
