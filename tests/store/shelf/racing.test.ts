import fc from "fast-check";
import { expect, test } from "vitest";
import { rename } from "../../../src/store/document/edits.ts";
import { firstState } from "../../../src/store/document/state.ts";
import type { SavedMessage } from "../../../src/store/shelf/session-machine.ts";
import { openShelf, openTab } from "../../support/tab.ts";

const { id } = firstState.instrument;

/** What happens to one of the tabs, in an order of chance. */
type Turn = readonly [tab: number, what: "edit" | "save" | "hear" | "reload"];

const turns: fc.Arbitrary<readonly Turn[]> = fc.array(
  fc.tuple(
    fc.nat(2),
    fc.oneof(
      { weight: 4, arbitrary: fc.constant("edit" as const) },
      { weight: 3, arbitrary: fc.constant("save" as const) },
      { weight: 3, arbitrary: fc.constant("hear" as const) },
      { weight: 1, arbitrary: fc.constant("reload" as const) },
    ),
  ),
  { minLength: 4, maxLength: 24 },
);

/** Three tabs on one instrument; word between them comes when a turn lets it. Each edit is a name of its own. */
async function race(order: readonly Turn[]) {
  const { shelf } = await openShelf();
  const post: SavedMessage[][] = [[], [], []];
  let visits = 0;
  const open = (tab: number, kept = firstState, storage?: ReturnType<typeof openTab>["storage"]) =>
    openTab(
      shelf,
      { ...kept, run: `visit ${visits++}` },
      {
        tell: (saved) => {
          for (const [other, box] of post.entries()) if (other !== tab) box.push(saved);
        },
        ...(storage === undefined ? {} : { storage }),
      },
    );
  const tabs = [open(0), open(1), open(2)];
  const saved = new Set<string>();
  let count = 0;
  const tabAt = (i: number) => tabs[i] ?? open(i);
  const save = async (i: number): Promise<void> => {
    const { session, store } = tabAt(i);
    const name = store.getState().instrument.name;
    if (session.state.getState().saving === "saving") saved.add(name);
    await session.flush();
  };
  const hear = async (i: number): Promise<void> => {
    for (const word of post[i]?.splice(0) ?? []) await tabAt(i).session.onSaved(word);
  };
  for (const [i, what] of order) {
    if (what === "edit")
      tabAt(i).edit((state) => ({ ...rename(state, `edit ${count++}`), undoStep: null }));
    if (what === "save") await save(i);
    if (what === "hear") await hear(i);
    if (what === "reload") {
      const { store, storage, session } = tabAt(i);
      await save(i);
      session.supersede();
      tabs[i] = open(i, store.getState(), storage);
      await tabAt(i).session.start();
    }
  }
  for (let round = 0; round < 4; round++)
    for (const i of [0, 1, 2]) {
      await save(i);
      await hear(i);
    }
  return { tabs, saved, entry: await shelf.open(id) };
}

test("tabs racing in any order end on one state, and no edit that came to be saved is out of undo's reach", async () => {
  let conflicts = 0;
  await fc.assert(
    fc.asyncProperty(turns, async (order) => {
      const { tabs, saved, entry } = await race(order);
      if (entry === undefined) {
        expect(saved.size).toBe(0);
        return;
      }
      const { document, history } = entry;
      const reached = new Set(
        [...history.past, ...history.future, document].map(({ instrument }) => instrument.name),
      );
      expect([...saved].filter((name) => !reached.has(name))).toEqual([]);
      for (const { store } of tabs)
        expect(store.getState().instrument.name).toBe(document.instrument.name);
      conflicts +=
        saved.size > 0 && tabs.some(({ session }) => session.state.getState().conflict) ? 1 : 0;
    }),
    { numRuns: 100 },
  );
  expect(conflicts).toBeGreaterThan(0);
}, 120_000);
