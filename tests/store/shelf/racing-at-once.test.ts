import fc from "fast-check";
import { expect, test } from "vitest";
import { rename } from "../../../src/store/document/edits.ts";
import { firstState } from "../../../src/store/document/state.ts";
import type { SavedMessage } from "../../../src/store/shelf/session-machine.ts";
import { openShelf, openTab } from "../../support/tab.ts";

const { id } = firstState.instrument;

/** Edits in one race: fewer than the steps of undo that are stored, so that each must be among them. */
const editsInRace = 20;

/** Waits so many turns of the event loop, in which the shelf answers and tabs hear of one another. */
const turns = async (count: number): Promise<void> => {
  for (let i = 0; i < count; i++) await new Promise((go) => setImmediate(go));
};

interface Pace {
  readonly tab: number;
  /** Turns before the next edit, and whether it is saved without its pause. */
  readonly wait: number;
  readonly atOnce: boolean;
}

const race = (tabs: number): fc.Arbitrary<readonly Pace[]> =>
  fc.array(fc.record({ tab: fc.nat(tabs - 1), wait: fc.nat(12), atOnce: fc.boolean() }), {
    minLength: editsInRace,
    maxLength: editsInRace,
  });

/** Runs a race in which nobody waits for anybody; gives the names made that no undo on the shelf brings back. */
async function lostIn(paces: readonly Pace[], count: number): Promise<readonly string[]> {
  const { shelf, database } = await openShelf({ stays: true });
  const tabs: ReturnType<typeof openTab>[] = [];
  const tellOthers = (from: number) => (message: SavedMessage) =>
    void turns(2).then(() =>
      tabs.forEach((tab, i) => {
        if (i !== from) void tab.session.onSaved(message);
      }),
    );
  for (let i = 0; i < count; i++) {
    const tab = openTab(shelf, { ...firstState, run: `visit ${i}` }, { tell: tellOthers(i) });
    tabs.push(tab);
    await tab.session.start();
  }
  const made: string[] = [];
  for (const { tab, wait, atOnce } of paces) {
    const name = `edit ${made.length}`;
    made.push(name);
    tabs[tab]?.edit((state) => ({ ...rename(state, name), undoStep: null }));
    if (atOnce) void tabs[tab]?.session.flush();
    await turns(wait);
  }
  for (let round = 0; round < 6; round++)
    for (const { session } of tabs) {
      await session.flush();
      await turns(6);
    }
  const entry = await shelf.open(id);
  database.close();
  if (entry === undefined) return made;
  const { document, history } = entry;
  for (const { store } of tabs)
    expect(store.getState().instrument.name).toBe(document.instrument.name);
  const reached = new Set(
    [...history.past, ...history.future, document].map(({ instrument }) => instrument.name),
  );
  return made.filter((name) => !reached.has(name));
}

test.each([
  [2, 50],
  [3, 50],
])(
  "%i tabs that edit at once lose nothing in %i races",
  async (tabs, races) => {
    let [edits, lost] = [0, 0];
    await fc.assert(
      fc.asyncProperty(race(tabs), async (paces) => {
        const gone = await lostIn(paces, tabs);
        edits += paces.length;
        lost += gone.length;
        expect(gone).toEqual([]);
      }),
      { numRuns: races, endOnFailure: true },
    );
    process.stdout.write(`${tabs} tabs: ${edits} edits, ${lost} lost\n`);
  },
  180_000,
);
