import { expect, test } from "vitest";
import { startFrom, stepField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { makeStore } from "../../../src/store/document/store.ts";
import { recorded } from "../../../src/store/document/undo.ts";
import { watchEarlyEdits } from "../../../src/store/shelf/left-early.ts";
import { newEntry } from "../../../src/store/shelf/shelf-entry.ts";
import { openShelf, openTab } from "../../support/tab.ts";

const longer = (state: State): State => stepField(state, "body.length", 1);
const { instrument } = firstState;

/** A page on which all this was done before its shelf was open, and the shelf a moment after. */
async function afterEarly(acts: readonly ((state: State) => State)[], kept?: State) {
  const { shelf } = await openShelf();
  if (kept !== undefined) await shelf.save({ ...newEntry(kept, 1), editId: kept.editId });
  const store = makeStore({
    ...(kept ?? firstState),
    run: "now",
    initialEditId: (kept ?? firstState).editId,
  });
  const takeEarly = watchEarlyEdits(store);
  for (const act of acts) store.setState((state) => recorded(state, act(state)));
  const { session } = openTab(shelf, firstState, { store, early: takeEarly() });
  await session.start();
  await session.flush();
  const names = (await shelf.cards()).map(({ id }) => id).sort();
  return { shelf, session, names };
}

const other = (id: string) => (state: State) => startFrom(state, instrument, id);

test("what is typed before the shelf is open is saved once it is", async () => {
  const { shelf, session } = await afterEarly([longer]);
  expect((await shelf.document(instrument.id))?.instrument.body.length).toBe(
    instrument.body.length + 1,
  );
  expect(session.state.getState().saving).toBe("saved");
});

test("and is still there two instruments later, each edited one on the shelf by itself", async () => {
  const { shelf, names } = await afterEarly([longer, other("b"), longer, longer, other("c")]);
  expect(names).toEqual(["b", instrument.id].sort());
  expect((await shelf.document("b"))?.instrument.body.length).toBe(instrument.body.length + 2);
});

test("what was not edited does not come on the shelf", async () => {
  expect((await afterEarly([other("b"), other("c")])).names).toEqual([]);
});

test("an instrument of the shelf, edited and left before it is open, is saved over its own entry", async () => {
  const kept: State = { ...firstState, editId: { run: "last visit", edit: 4 } };
  const { shelf, names } = await afterEarly([longer, other("b")], kept);
  expect(names).toEqual([instrument.id]);
  expect((await shelf.document(instrument.id))?.instrument.body.length).toBe(
    instrument.body.length + 1,
  );
});
