import { createStore, type StoreApi } from "zustand/vanilla";
import { recordOn } from "./bench.ts";
import type { BenchStore } from "./bench-keep.ts";
import { firstComparison } from "./compare.ts";
import type { Comparisons } from "./compare-keep.ts";
import { asJson } from "./json.ts";
import type { Keeper } from "./keep.ts";
import type { Shelf } from "./shelf.ts";
import type { Entry } from "./shelf-entry.ts";
import type { State, Work } from "./state.ts";
import type { Store } from "./store.ts";
import { sameWork, workIn } from "./undo.ts";

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
  readonly compare: StoreApi<Comparisons>;
  readonly bench: BenchStore;
  readonly shelf: Shelf;
  readonly tell: (saved: Saved) => void;
  /** What this tab knows it saved last, over a reload. */
  readonly keeper: Keeper;
  readonly now: () => number;
}

/** From an edit to its saving, ms. */
const pause = 300;

const key = "rimwright-saved";

/** Keeps the open instrument on the shelf: saves it a moment after each edit, and takes in what other tabs save of it. */
export class Session {
  readonly state = createStore<SessionState>(() => ({ saving: "new", met: false }));
  readonly #parts: Parts;
  /** Of the entry that what is on screen was made from; 0 for an instrument not yet on the shelf. */
  #revision = 0;
  #waiting: ReturnType<typeof setTimeout> | null = null;
  #writing: Promise<void> = Promise.resolve();
  /** While an entry is being shown, what changes on screen is no edit. */
  #showing = false;

  constructor(parts: Parts) {
    this.#parts = parts;
    parts.store.subscribe((after, before) => this.#watchWork(after, before));
    parts.compare.subscribe((after, before) => {
      if (after[this.#id()] !== before[this.#id()]) this.#edited();
    });
    parts.bench.subscribe((after, before) => {
      if (recordOn(after, this.#id()) !== recordOn(before, this.#id())) this.#edited();
    });
  }

  /**
   * Finds the entry of what is on screen. What this tab had not saved yet is saved now; where another
   * has saved since, theirs is shown.
   */
  async start(): Promise<void> {
    const entry = await this.#parts.shelf.open(this.#id());
    if (entry === undefined) return;
    const work = workIn(this.#parts.store.getState());
    if (JSON.stringify(entry.work) === JSON.stringify(work)) {
      this.#revision = entry.revision;
      this.state.setState({ saving: "saved" });
    } else if (entry.revision > this.#recalled(entry.id)) this.#meet(entry, work);
    else {
      this.#revision = entry.revision;
      this.#edited();
    }
  }

  /** Opens an entry in place of what is on screen, which is saved first. False when there is none. */
  async open(id: string): Promise<boolean> {
    await this.flush();
    const entry = await this.#parts.shelf.open(id);
    if (entry !== undefined) this.#show(entry);
    return entry !== undefined;
  }

  /** Another tab has saved an entry: the one on screen follows it, unless it has edits of its own to save. */
  async hear({ id, revision }: Saved): Promise<void> {
    if (id !== this.#id() || revision <= this.#revision || this.#waiting !== null) return;
    const entry = await this.#parts.shelf.open(id);
    if (entry !== undefined && this.#waiting === null && id === this.#id()) this.#show(entry);
  }

  /** Saves at once what waits to be saved. */
  async flush(): Promise<void> {
    if (this.#waiting !== null) {
      clearTimeout(this.#waiting);
      this.#waiting = null;
      const entry = this.#entry();
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
    return this.#parts.store.getState().instrument.id;
  }

  #watchWork(after: State, before: State): void {
    if (this.#showing || sameWork(after, before)) return;
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
    this.state.setState({ saving: "new", met: false });
    await this.#writing;
  }

  #edited(): void {
    if (this.#showing || this.state.getState().saving === "superseded") return;
    this.state.setState({ saving: "saving", met: false });
    this.#waiting ??= setTimeout(() => void this.flush(), pause);
  }

  async #save(entry: Entry): Promise<void> {
    if (this.state.getState().saving === "superseded") return;
    const ours = entry.id === this.#id();
    try {
      const result = await this.#parts.shelf.save(
        ours ? { ...entry, revision: this.#revision } : entry,
      );
      if (!result.saved) {
        if (ours) this.#meet(result.theirs, entry.work);
        return;
      }
      if (ours) this.#remember(result.entry);
      this.#parts.tell({ id: entry.id, revision: result.entry.revision });
      if (ours && this.#waiting === null) this.state.setState({ saving: "saved" });
    } catch {
      this.state.setState({ saving: "refused" });
    }
  }

  /** Two tabs have changed it: the other's stands, and what is on screen here is one undo away. */
  #meet(theirs: Entry, ours: Work): void {
    const past = [...theirs.history.past, ours];
    this.#show({ ...theirs, history: { past, future: [] } });
    this.state.setState({ saving: "saved", met: true });
  }

  #remember({ id, revision }: Saved): void {
    this.#revision = revision;
    try {
      this.#parts.keeper.setItem(key, JSON.stringify({ id, revision }));
    } catch {
      // Then a reload takes the shelf's word.
    }
  }

  #recalled(id: string): number {
    try {
      const known = asJson(JSON.parse(this.#parts.keeper.getItem(key) ?? "null"));
      return known["id"] === id && typeof known["revision"] === "number" ? known["revision"] : 0;
    } catch {
      return 0;
    }
  }

  #entry(): Entry {
    return this.#entryOf(this.#parts.store.getState(), this.#revision);
  }

  #entryOf(state: State, revision: number): Entry {
    const { id } = state.instrument;
    return {
      version: 1,
      id,
      revision,
      savedAt: this.#parts.now(),
      work: workIn(state),
      history: { past: state.past.slice(-keptActs), future: state.future.slice(0, keptActs) },
      comparison: this.#parts.compare.getState()[id] ?? firstComparison,
      asBuilt: recordOn(this.#parts.bench.getState(), id),
    };
  }

  #show({ id, revision, work, history, comparison, asBuilt }: Entry): void {
    const { store, compare, bench } = this.#parts;
    this.#showing = true;
    store.setState((state) => ({ ...state, ...work, ...history, lastChanged: null, gesture: "" }));
    compare.setState((all) => ({ ...all, [id]: comparison }));
    bench.setState((all) => ({ ...all, records: { ...all.records, [id]: asBuilt } }));
    this.#showing = false;
    this.#remember({ id, revision });
    this.state.setState({ saving: "saved", met: false });
  }
}

/** Acts kept with an entry, each way. */
const keptActs = 40;
