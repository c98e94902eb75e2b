import { describe, expect, test } from "vitest";
import { type EditId, noEditId } from "../../../src/store/document/edit-id.ts";
import { stepField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { documentIn } from "../../../src/store/document/undo.ts";
import {
  firstSession,
  nextSession,
  readKnownEntries,
  type SessionEvent,
  type SessionState,
} from "../../../src/store/shelf/session-machine.ts";
import type { Entry } from "../../../src/store/shelf/shelf-entry.ts";

const { id } = firstState.instrument;
const at = (run: string, edit: number) => ({ run, edit });

/** What is on screen after so many edits of this visit. */
function screenAfter(edits: number, on = id): State {
  let state: State = { ...firstState, run: "ours", editId: at("ours", edits) };
  for (let i = 0; i < edits; i += 1) state = stepField(state, "body.length", 1);
  return { ...state, instrument: { ...state.instrument, id: on } };
}

function entryFrom(screen: State, revision: number, editId = screen.editId): Entry {
  const document = documentIn(screen);
  const history = { past: [], future: [] };
  return {
    version: 2,
    id: document.instrument.id,
    revision,
    savedAt: 1,
    editId,
    document,
    history,
  };
}

const screen = screenAfter(2);
const now = { screen, time: 1 };
const base = noEditId;
const unedited = { screen: { ...screenAfter(0), editId: noEditId }, time: 1 };
const ours = entryFrom(screen, 3);
const earlier = entryFrom(screenAfter(1), 4);
const later = entryFrom(screenAfter(3), 4);
const theirs = entryFrom(screenAfter(1), 4, at("theirs", 5));
const other = entryFrom(screenAfter(1, "other"), 1);
const elsewhere = { screen: screenAfter(0, "other"), time: 1 };

const fresh = firstSession({ screen: screenAfter(0), base: noEditId }, []);
const states: Readonly<Record<string, SessionState>> = {
  new: fresh,
  saved: { ...fresh, saving: "saved", revision: 3, everSaved: true },
  waiting: { ...fresh, saving: "saving", revision: 3, waiting: true, everSaved: true },
  "being saved": { ...fresh, saving: "saving", revision: 3, everSaved: true },
  refused: { ...fresh, saving: "refused", revision: 3, unsaved: [ours], everSaved: true },
  superseded: { ...fresh, saving: "superseded", revision: 3, everSaved: true },
};

/** The state before, what happens, how it is saved after, and what is asked for. */
type Row = readonly [string, string, SessionEvent, SessionState["saving"], readonly string[]];

const showing = ["stop waiting", "show", "remember"];
const told = (revision: number): SessionEvent => ({ is: "told", message: { id, revision } });

const table: readonly Row[] = [
  ["new", "begins", { is: "begun", left: [], now }, "new", ["find"]],
  ["new", "is found nowhere", { is: "found", entry: undefined, now: unedited }, "new", []],
  ["new", "is found nowhere, edited", { is: "found", entry: undefined, now }, "saving", ["wait"]],
  [
    "new",
    "begins after another was edited and left",
    { is: "begun", left: [{ screen: screenAfter(1, "other"), base }], now },
    "new",
    ["save", "find"],
  ],
  ["new", "is found as it is", { is: "found", entry: ours, now }, "saved", ["remember"]],
  ["new", "is found earlier", { is: "found", entry: earlier, now }, "saving", ["wait"]],
  ["new", "is found later", { is: "found", entry: later, now }, "saved", showing],
  [
    "new",
    "is found as another's",
    { is: "found", entry: theirs, now },
    "saving",
    [...showing, "wait"],
  ],
  ["new", "finds another instrument", { is: "found", entry: other, now }, "new", []],
  ["new", "is edited", { is: "edited" }, "saving", ["wait"]],
  [
    "new",
    "is first saved",
    { is: "saved", entry: ours },
    "saved",
    ["remember", "tell", "first save"],
  ],
  ["new", "is left", { is: "left", before: screen, now: elsewhere }, "new", ["find"]],
  ["saved", "is edited", { is: "edited" }, "saving", ["wait"]],
  ["saved", "is due", { is: "due", now }, "saved", []],
  ["saved", "is told of a later save", told(4), "saved", ["fetch"]],
  ["saved", "is told of its own save", told(3), "saved", []],
  ["saved", "fetches theirs", { is: "fetched", message: theirs, entry: theirs }, "saved", showing],
  ["saved", "fetches nothing", { is: "fetched", message: theirs, entry: undefined }, "saved", []],
  ["saved", "gives place", { is: "opened", entry: other, now }, "saved", showing],
  ["waiting", "is edited again", { is: "edited" }, "saving", ["wait"]],
  ["waiting", "is due", { is: "due", now }, "saving", ["stop waiting", "save"]],
  ["waiting", "is told of a later save", told(4), "saving", []],
  ["waiting", "is saved meanwhile", { is: "saved", entry: ours }, "saving", ["remember", "tell"]],
  [
    "waiting",
    "is left",
    { is: "left", before: screen, now: elsewhere },
    "new",
    ["stop waiting", "save", "find"],
  ],
  [
    "waiting",
    "gives place",
    { is: "opened", entry: other, now },
    "saved",
    ["stop waiting", "save", ...showing],
  ],
  ["being saved", "is saved", { is: "saved", entry: ours }, "saved", ["remember", "tell"]],
  ["being saved", "is refused", { is: "refused", entry: ours }, "refused", []],
  [
    "being saved",
    "was saved by an earlier visit of its own",
    { is: "overtaken", theirs: earlier, ours, base, now },
    "saving",
    ["save"],
  ],
  [
    "being saved",
    "was saved by another",
    { is: "overtaken", theirs, ours, base, now },
    "saving",
    [...showing, "wait"],
  ],
  [
    "being saved",
    "sees another overtaken",
    { is: "overtaken", theirs: other, ours: other, base, now },
    "saving",
    ["save"],
  ],
  ["refused", "is edited", { is: "edited" }, "saving", ["wait"]],
  ["refused", "is saved", { is: "saved", entry: ours }, "saved", ["remember", "tell"]],
  [
    "refused",
    "sees another saved",
    { is: "saved", entry: other },
    "refused",
    ["remember", "tell", "save"],
  ],
  ["superseded", "is edited", { is: "edited" }, "superseded", []],
  ["superseded", "is due", { is: "due", now }, "superseded", []],
  ["superseded", "is left", { is: "left", before: screen, now: elsewhere }, "superseded", []],
  ["superseded", "is refused", { is: "refused", entry: ours }, "superseded", []],
  ["waiting", "is superseded", { is: "superseded" }, "superseded", ["stop waiting"]],
];

describe("what is on screen", () => {
  test.each(table)("%s, when it %s", (from, _, event, saving, asked) => {
    const before = states[from];
    if (before === undefined) throw new Error(from);
    const [after, effects] = nextSession(before, event);
    expect(after.saving).toBe(saving);
    expect(effects.map(({ is }) => is)).toEqual(asked);
  });

  test("is told of from every state", () => {
    expect([...new Set(table.map(([from]) => from))].sort()).toEqual(Object.keys(states).sort());
  });
});

describe("two tabs that meet", () => {
  test("end on theirs, with ours one undo away and a later edit of this visit", () => {
    const [after, effects] = nextSession(states["being saved"] ?? fresh, {
      is: "overtaken",
      theirs,
      ours,
      base,
      now,
    });
    const shown = effects.find(({ is }) => is === "show");
    if (shown?.is !== "show") throw new Error("nothing shown");
    expect(shown.entry.document).toEqual(theirs.document);
    expect(shown.entry.history.past).toEqual([ours.document]);
    expect(shown.entry.editId).toEqual(at("ours", 6));
    expect(after).toMatchObject({ conflict: true, waiting: true, revision: theirs.revision });
  });

  test("say nothing where all of ours is in theirs", () => {
    const whole = { ...theirs, document: documentIn(screen) };
    const [after] = nextSession(states["being saved"] ?? fresh, {
      is: "overtaken",
      theirs: whole,
      ours,
      base,
      now,
    });
    expect(after).toMatchObject({ conflict: false, waiting: false, saving: "saved" });
  });
});

test("an instrument left while its save is on the way is saved over that, not beside it", () => {
  const left = entryFrom(screenAfter(2, "other"), 1);
  const onTheWay = entryFrom(screenAfter(1, "other"), 2);
  const [, effects] = nextSession(fresh, {
    is: "overtaken",
    theirs: onTheWay,
    ours: left,
    base,
    now,
  });
  expect(effects).toEqual([{ is: "save", entry: { ...left, revision: 2 }, base }]);
});

test("what was refused is tried again one after another once the browser takes something", () => {
  const [first, second] = [ours, other].map((entry, i) => ({ ...entry, id: `left-${i}` }));
  if (first === undefined || second === undefined) throw new Error("no entries");
  const waiting = { ...fresh, unsaved: [first, second] };
  const [after, effects] = nextSession(waiting, { is: "saved", entry: ours });
  expect(effects.at(-1)).toMatchObject({ is: "save", entry: first });
  const [, next] = nextSession(after, { is: "saved", entry: first });
  expect(next.at(-1)).toMatchObject({ is: "save", entry: second });
});

describe("visits that end before they are told of their saving", () => {
  // Z saved its edit 9 and was killed; A began with that, made an edit and was killed before it saved any.
  const z = at("z", 9);
  const a = at("a", 10);
  const ended = (left: SessionState): SessionState["known"] =>
    readKnownEntries(
      JSON.parse(
        JSON.stringify(left.known.map(({ editId, ...one }) => ({ ...one, stamp: editId }))),
      ),
    );
  const begin = (base: EditId, known: SessionState["known"]): SessionState => {
    const onScreen = { ...screenAfter(1), editId: base };
    const first = firstSession({ screen: onScreen, base }, known);
    return nextSession(first, { is: "begun", left: [], now: { screen: onScreen, time: 1 } })[0];
  };
  const left = { ...screenAfter(1), editId: a };

  test("are no other tab: what the first had saved is an earlier state of what is on screen", () => {
    const visit = begin(a, ended(begin(z, [])));
    const [next, effects] = nextSession(visit, {
      is: "found",
      entry: entryFrom(screenAfter(0), 5, z),
      now: { screen: left, time: 1 },
    });
    expect(next.conflict).toBe(false);
    expect(next.revision).toBe(5);
    expect(effects.map(({ is }) => is)).toEqual(["wait"]);
  });

  test("still see another tab's save, which none of them began with", () => {
    const visit = begin(a, ended(begin(z, [])));
    const [next] = nextSession(visit, {
      is: "found",
      entry: entryFrom(screenAfter(3), 5, at("theirs", 11)),
      now: { screen: left, time: 1 },
    });
    expect(next.conflict).toBe(true);
  });

  test("leave an instrument that was never on the shelf one that never was", () => {
    const past = [documentIn(screenAfter(0))];
    const onScreen = { ...left, past };
    const visit = begin(a, []);
    const [next] = nextSession(visit, {
      is: "found",
      entry: undefined,
      now: { screen: onScreen, time: 1 },
    });
    expect(next.saving).toBe("saving");
  });
});
