import { beforeEach, describe, expect, test } from "vitest";
import { readEditId } from "../../../src/store/document/edit-id.ts";
import { stepField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import type { Shelf } from "../../../src/store/shelf/shelf.ts";
import { openShelf, openTab } from "../../support/tab.ts";

let shelf: Shelf;
beforeEach(async () => {
  ({ shelf } = await openShelf());
});

const longer = (state: State): State => stepField(state, "body.length", 1);
const { length } = firstState.instrument.body;
const visit = (run: string, kept: State = firstState): State => ({
  ...kept,
  run,
  initialEditId: kept.editId,
});
const shown = (tab: ReturnType<typeof openTab>): number =>
  tab.store.getState().instrument.body.length;

async function oneEditSaved(): Promise<ReturnType<typeof openTab>> {
  const tab = openTab(shelf, visit("one"));
  tab.edit(longer);
  await tab.session.flush();
  return tab;
}

async function anotherVisitSaves(): Promise<void> {
  const other = openTab(shelf, visit("other"));
  await other.session.start();
  other.edit(longer);
  await other.session.flush();
}

describe("after a visit that was cut off", () => {
  test("the shelf's later edits are shown, though what the tab kept is older and no save was noted", async () => {
    const first = openTab(shelf, visit("one"));
    first.edit(longer);
    const kept = first.store.getState();
    first.edit(longer);
    await first.session.flush();
    const again = openTab(shelf, visit("two", kept));
    await again.session.start();
    expect(shown(again)).toBe(length + 2);
    expect(again.session.state.getState()).toMatchObject({ saving: "saved", conflict: false });
  });

  test("the tab's later edits are saved over the shelf's, though its last save was never noted", async () => {
    const first = await oneEditSaved();
    first.edit(longer);
    const again = openTab(shelf, visit("two", first.store.getState()));
    await again.session.start();
    await again.session.flush();
    expect((await shelf.open(firstState.instrument.id))?.document.instrument.body.length).toBe(
      length + 2,
    );
    expect(again.session.state.getState().conflict).toBe(false);
  });

  test("an edit made before the shelf is open goes on from that visit, and stays on screen", async () => {
    const first = await oneEditSaved();
    const again = openTab(shelf, visit("two", first.store.getState()));
    again.edit(longer);
    await again.session.start();
    await again.session.flush();
    expect(shown(again)).toBe(length + 2);
    expect(again.session.state.getState()).toMatchObject({ saving: "saved", conflict: false });
  });

  test("an edit made before the shelf is open yields to what the tab had not kept of that visit", async () => {
    const first = openTab(shelf, visit("one"));
    first.edit(longer);
    const kept = first.store.getState();
    first.edit(longer);
    first.edit(longer);
    await first.session.flush();
    const again = openTab(shelf, visit("two", kept));
    again.edit(longer);
    await again.session.start();
    expect(shown(again)).toBe(length + 3);
    expect(again.session.state.getState().conflict).toBe(true);
  });

  test("its last save, come late, is no other tab's", async () => {
    const first = await oneEditSaved();
    first.edit(longer);
    const again = openTab(shelf, visit("two", first.store.getState()));
    await again.session.start();
    await first.session.flush();
    again.edit(longer);
    await again.session.flush();
    expect(shown(again)).toBe(length + 3);
    expect(again.session.state.getState()).toMatchObject({ saving: "saved", conflict: false });
  });

  test("what another visit saved since is shown without a word when nothing of ours was unsaved", async () => {
    const first = await oneEditSaved();
    await anotherVisitSaves();
    const again = openTab(shelf, visit("two", first.store.getState()), { storage: first.storage });
    await again.session.start();
    expect(shown(again)).toBe(length + 2);
    expect(again.session.state.getState().conflict).toBe(false);
  });

  test("what another visit saved since is shown, and said, when ours had unsaved edits", async () => {
    const first = await oneEditSaved();
    await anotherVisitSaves();
    first.edit((state) => stepField(state, "shim.contact", 1));
    const again = openTab(shelf, visit("two", first.store.getState()), { storage: first.storage });
    await again.session.start();
    expect(shown(again)).toBe(length + 2);
    expect(again.session.state.getState().conflict).toBe(true);
    expect(again.store.getState().past.at(-1)?.instrument.shim.contact).toBe(
      firstState.instrument.shim.contact + 1,
    );
  });
});

test("an edit id that cannot be read is of no known visit", () => {
  for (const json of [null, 7, {}, { run: 1, edit: 2 }, { run: "a", edit: Number.NaN }]) {
    expect(readEditId(json)).toEqual({ run: "", edit: 0 });
  }
});
