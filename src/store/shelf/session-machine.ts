import { dequal as equal } from "dequal/lite";
import { type EditId, noEditId, readEditId, sameEditId, sameVisit } from "../document/edit-id.ts";
import { asJson } from "../document/json.ts";
import type { State } from "../document/state.ts";
import { documentIn } from "../document/undo.ts";
import type { OnScreen } from "./left-early.ts";
import type { Entry } from "./shelf-entry.ts";
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

/**
 * An entry as this tab last saved or showed it; of revision -1 where it did neither. `from`: the edits that
 * visits of this tab began with since, the last first: a visit may end before it is told that it saved.
 */
export type KnownEntry = Pick<Entry, "id" | "revision" | "editId"> & {
  readonly from?: readonly EditId[];
};

/** Told from tab to tab: an entry has been saved. */
export type SavedMessage = Pick<Entry, "id" | "revision">;

/** A page's session on the shelf. Plain data. */
export interface SessionState {
  readonly saving: Saving;
  /** Another tab saved this instrument at the same moment: theirs is shown, and ours is one undo away. */
  readonly conflict: boolean;
  /** The visit whose session this is. */
  readonly run: string;
  /** The instrument on screen, and the revision of the entry it was made from; 0 where it is not yet on the shelf. */
  readonly id: string;
  readonly revision: number;
  /** The edit that had made it when it came on screen, which may still be on its way to the shelf from the last visit. */
  readonly base: EditId;
  /** Whether an edit waits for its saving. */
  readonly waiting: boolean;
  /** What the browser would not take: tried again as soon as it takes something. */
  readonly unsaved: readonly Entry[];
  readonly known: readonly KnownEntry[];
  readonly everSaved: boolean;
}

export const firstSession = (
  { screen, base }: OnScreen,
  known: readonly KnownEntry[],
): SessionState => ({
  saving: "new",
  conflict: false,
  run: screen.run,
  id: screen.instrument.id,
  revision: 0,
  base,
  waiting: false,
  unsaved: [],
  known,
  everSaved: false,
});

/** What is on screen, and the time. */
export interface Now {
  readonly screen: State;
  readonly time: number;
}

/** What happens to a session. */
export type SessionEvent =
  /** The shelf is open: is what is on screen there? `left` is what left the screen before, edited. */
  | { readonly is: "begun"; readonly left: readonly OnScreen[]; readonly now: Now }
  | { readonly is: "found"; readonly entry: Entry | undefined; readonly now: Now }
  | { readonly is: "edited" }
  /** Another instrument came on screen by the page's own edit, after `before`. */
  | { readonly is: "left"; readonly before: State; readonly now: Now }
  /** An entry is to come on screen. */
  | { readonly is: "opened"; readonly entry: Entry; readonly now: Now }
  /** What waits is to be saved now. */
  | { readonly is: "due"; readonly now: Now }
  | { readonly is: "saved"; readonly entry: Entry }
  /** Another tab had saved over what `ours` was made from. */
  | {
      readonly is: "overtaken";
      readonly theirs: Entry;
      readonly ours: Entry;
      readonly base: EditId;
      readonly now: Now;
    }
  | { readonly is: "refused"; readonly entry: Entry }
  /** Another tab tells of its saving. */
  | { readonly is: "told"; readonly message: SavedMessage }
  | { readonly is: "fetched"; readonly message: SavedMessage; readonly entry: Entry | undefined }
  | { readonly is: "superseded" };

/** What a session asks for. The first three ask the shelf, and their answer is an event. */
export type SessionEffect =
  | { readonly is: "find"; readonly id: string }
  /** `base` is the edit that had made it when it came on screen. */
  | { readonly is: "save"; readonly entry: Entry; readonly base: EditId }
  | { readonly is: "fetch"; readonly message: SavedMessage }
  /** From this edit on, what waits waits for its rest. */
  | { readonly is: "wait" }
  | { readonly is: "stop waiting" }
  | { readonly is: "show"; readonly entry: Entry }
  /** What is known is to be known after a reload too. */
  | { readonly is: "remember" }
  | { readonly is: "tell"; readonly message: SavedMessage }
  | { readonly is: "first save" };

type Next = readonly [SessionState, readonly SessionEffect[]];

/** The session after an event, and what it asks for, in that order. */
export function nextSession(state: SessionState, event: SessionEvent): Next {
  switch (event.is) {
    case "begun":
      return begun(state, event.left, event.now);
    case "found":
      return found(state, event.entry, event.now);
    case "edited":
      return edited(state);
    case "left":
      return left(state, event.before, event.now);
    case "opened":
      return after(leave(state, event.now.screen, event.now.time), (so) => show(so, event.entry));
    case "due":
      return leave(state, event.now.screen, event.now.time);
    case "saved":
      return saved(state, event.entry);
    case "overtaken":
      return overtaken(state, event);
    case "refused":
      return [
        { ...withSaving(state, "refused"), unsaved: withOne(state.unsaved, event.entry) },
        [],
      ];
    case "told":
      return [state, isNews(state, event.message) ? [{ is: "fetch", message: event.message }] : []];
    case "fetched":
      if (event.entry === undefined || !isNews(state, event.message)) return [state, []];
      return after(show(state, event.entry), (so) => [{ ...so, conflict: state.conflict }, []]);
    case "superseded":
      return [{ ...state, saving: "superseded", waiting: false }, [{ is: "stop waiting" }]];
  }
}

function begun(state: SessionState, left: readonly OnScreen[], { time }: Now): Next {
  const saves = left.map(
    ({ screen, base }) => ({ is: "save", entry: entryOf(screen, 0, time), base }) as const,
  );
  const asks = [...saves, { is: "find", id: state.id } as const];
  if (state.base.run === "") return [state, asks];
  const own = knownOf(state, state.id);
  const from = [state.base, ...fromOf(own)].slice(0, mostBeginnings);
  const known = withOne(state.known, { ...own, from });
  return [{ ...state, known }, [{ is: "remember" }, ...asks]];
}

/** As many visits in a row hardly end before any of them is told of its saving. */
const mostBeginnings = 8;

const fromOf = ({ from = [] }: KnownEntry): readonly EditId[] => from;

/** What was found under the id on screen: the same, an earlier state of ours, or another tab's. */
function found(state: SessionState, entry: Entry | undefined, now: Now): Next {
  const ours = now.screen.editId;
  if (entry === undefined && now.screen.instrument.id === state.id && isUnsaved(state, now))
    return edited(state);
  if (entry === undefined || entry.id !== state.id) return [state, []];
  if (sameEditId(entry.editId, ours) && equal(entry.document, documentIn(now.screen)))
    return remember(withSaving(state, "saved"), entry);
  const goesOn = sameVisit(entry.editId, ours)
    ? ours.edit >= entry.editId.edit
    : entry.revision <= knownOf(state, entry.id).revision;
  const bases = [state.base, ...fromOf(knownOf(state, entry.id))];
  if (goesOn || isBehind(bases, entry.editId, ours))
    return edited({ ...state, revision: entry.revision });
  const isSaved = ours.edit === 0 || sameEditId(ours, knownOf(state, entry.id).editId);
  if (isSaved || sameVisit(entry.editId, ours)) return show(state, entry);
  return showConflict(state, entry, now);
}

/**
 * Whether what is not on the shelf is to come there like what is edited now: edited before the shelf could be
 * asked, or by a visit whose shelf never opened. What was on the shelf before has been taken from it.
 */
function isUnsaved({ base, known, id }: SessionState, { screen }: Now): boolean {
  const wasKnown = known.some((one) => one.id === id && one.revision >= 0);
  return !sameEditId(screen.editId, base) || (screen.past.length > 0 && !wasKnown);
}

function edited(state: SessionState): Next {
  if (state.saving === "superseded") return [state, []];
  const { saving, conflict, waiting } = state;
  const wait = [{ is: "wait" }] as const;
  if (saving === "saving" && waiting && !conflict) return [state, wait];
  return [{ ...state, saving: "saving", conflict: false, waiting: true }, wait];
}

/** Saves what waits, as it is on `screen`. */
function leave(state: SessionState, screen: State, time: number): Next {
  if (!state.waiting) return [state, []];
  const entry = entryOf(screen, state.revision, time);
  const { base } = state;
  return [{ ...state, waiting: false }, [{ is: "stop waiting" }, { is: "save", entry, base }]];
}

function left(state: SessionState, before: State, { screen, time }: Now): Next {
  return after(leave(state, before, time), (so) => {
    const next = { ...so, id: screen.instrument.id, revision: 0, base: screen.editId };
    if (so.saving === "superseded") return [next, []];
    // What was opened before may be on the shelf.
    return [{ ...next, saving: "new", conflict: false }, [{ is: "find", id: next.id }]];
  });
}

function saved(state: SessionState, entry: Entry): Next {
  const unsaved = state.unsaved.filter(({ id }) => id !== entry.id);
  const { id, revision, editId } = entry;
  const isShown = id === state.id;
  const next = {
    ...withSaving(state, isShown && !state.waiting ? "saved" : state.saving),
    unsaved,
    known: withOne(state.known, { id, revision, editId }),
    revision: isShown ? revision : state.revision,
    everSaved: true,
  };
  return [
    next,
    [
      { is: "remember" },
      { is: "tell", message: { id, revision } },
      ...(state.everSaved ? [] : [{ is: "first save" } as const]),
      ...unsaved.slice(0, 1).map((one) => ({ is: "save", entry: one, base: one.editId }) as const),
    ],
  ];
}

function overtaken(
  state: SessionState,
  { theirs, ours, base, now }: Extract<SessionEvent, { readonly is: "overtaken" }>,
): Next {
  const { id, revision } = theirs;
  if (isBehind([base], theirs.editId, ours.editId)) {
    const next = id === state.id ? { ...state, revision } : state;
    return [next, [{ is: "save", entry: { ...ours, revision }, base }]];
  }
  // A save that was refused, and tried again after a later one of the same visit.
  if (goesOnFrom(theirs.editId, ours.editId)) {
    const unsaved = state.unsaved.filter((one) => one.id !== id);
    return [{ ...state, unsaved }, []];
  }
  if (id === state.id) return showConflict(state, theirs, now);
  const entry = mergeHistories(theirs, ours, state.run);
  return [state, entry === theirs ? [] : [{ is: "save", entry, base: entry.editId }]];
}

/** Two tabs have changed it: the other's stands, and what is on screen here is one undo away, on the shelf too. */
function showConflict(state: SessionState, theirs: Entry, { screen, time }: Now): Next {
  const both = mergeHistories(theirs, entryOf(screen, state.revision, time), state.run);
  const shown = show(state, both);
  if (both === theirs) return shown;
  return after(after(shown, edited), (so) => [{ ...so, conflict: true }, []]);
}

/** Theirs, with all that is ours alone before it in the history: an edit of visit `run`. */
function mergeHistories(theirs: Entry, ours: Entry, run: string): Entry {
  const { past } = theirs.history;
  const known = [...past, theirs.document];
  const own = [...ours.history.past, ours.document].filter(
    (document) => !known.some((one) => equal(one, document)),
  );
  if (own.length === 0) return theirs;
  const edit = Math.max(theirs.editId.edit, ours.editId.edit) + 1;
  return { ...theirs, editId: { run, edit }, history: { past: [...past, ...own], future: [] } };
}

function show(state: SessionState, entry: Entry): Next {
  const { id, editId: base } = entry;
  const next = { ...withSaving(state, "saved"), conflict: false, id, base, waiting: false };
  return after([next, [{ is: "stop waiting" }, { is: "show", entry }]], (so) =>
    remember(so, entry),
  );
}

function remember(state: SessionState, { id, revision, editId }: Entry): Next {
  const entry = { id, revision, editId };
  const known = withOne(state.known, entry);
  return [{ ...state, revision, known }, [{ is: "remember" }]];
}

/** Whether what another save left is only an earlier state of ours, which was made from `bases`. */
const isBehind = (bases: readonly EditId[], theirs: EditId, ours: EditId): boolean =>
  [ours, ...bases].some((one) => goesOnFrom(one, theirs));

/** Whether an edit was made after another of the same visit, or is that. */
const goesOnFrom = (later: EditId, earlier: EditId): boolean =>
  sameVisit(later, earlier) && later.edit >= earlier.edit;

/** Whether a message tells of a later save of what is on screen, which has no edits of its own to save. */
const isNews = ({ id, revision, waiting }: SessionState, message: SavedMessage): boolean =>
  message.id === id && message.revision > revision && !waiting;

/** One that is superseded stays so. */
const withSaving = (state: SessionState, saving: Saving): SessionState =>
  state.saving === "superseded" ? state : { ...state, saving };

const knownOf = ({ known }: SessionState, id: string): KnownEntry =>
  known.find((one) => one.id === id) ?? { id, revision: -1, editId: noEditId };

const withOne = <Of extends { readonly id: string }>(
  all: readonly Of[],
  one: Of,
): readonly Of[] => [...all.filter(({ id }) => id !== one.id), one];

function after([state, effects]: Next, then: (state: SessionState) => Next): Next {
  const [next, more] = then(state);
  return [next, [...effects, ...more]];
}

const entryOf = (screen: State, revision: number, savedAt: number): Entry => ({
  version: 2,
  id: screen.instrument.id,
  revision,
  savedAt,
  editId: screen.editId,
  document: documentIn(screen),
  history: storedHistory(screen),
});

/** Known entries from any JSON value, without those that cannot be read. An earlier page stored a single one. */
export const readKnownEntries = (json: unknown): readonly KnownEntry[] =>
  (Array.isArray(json) ? json : [json]).flatMap((one) => {
    const { id, revision, stamp, from } = asJson(one);
    if (typeof id !== "string" || typeof revision !== "number") return [];
    const begun = Array.isArray(from) ? from.map(readEditId).filter(({ run }) => run !== "") : [];
    return [
      { id, revision, editId: readEditId(stamp), ...(begun.length > 0 ? { from: begun } : {}) },
    ];
  });
