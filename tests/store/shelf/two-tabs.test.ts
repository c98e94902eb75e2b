import { expect, test } from "vitest";
import { setField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import type { SavedMessage } from "../../../src/store/shelf/session-machine.ts";
import { readCard } from "../../../src/store/shelf/shelf-entry.ts";
import { openShelf, openTab } from "../../support/tab.ts";

const long = (length: number) => (state: State) => setField(state, "body.length", length);
const lengthIn = ({ instrument }: Pick<State, "instrument">): number => instrument.body.length;

test("of two tabs that edit at once, what yields stays one undo away in both, whatever is saved and told after", async () => {
  const { shelf } = await openShelf();
  const heard: Promise<void>[] = [];
  const tellTo = (other: () => ReturnType<typeof openTab>) => (saved: SavedMessage) =>
    void heard.push(other().session.onSaved(saved));
  const one = openTab(shelf, { ...firstState, run: "one" }, { tell: tellTo(() => two) });
  const two: ReturnType<typeof openTab> = openTab(
    shelf,
    { ...firstState, run: "two" },
    { tell: tellTo(() => one) },
  );
  const settle = async (): Promise<void> => {
    for (let i = 0; i < 5; i += 1) {
      await one.session.flush();
      await two.session.flush();
      await Promise.all(heard.splice(0));
    }
  };
  for (let i = 0; i < 5; i += 1) {
    one.edit(long(480 + i));
    two.edit(long(500 + i));
    await Promise.all([one.session.flush(), two.session.flush()]);
    await settle();
    const [ours, theirs] = [one.store.getState(), two.store.getState()];
    expect(lengthIn(ours)).toBe(lengthIn(theirs));
    const yielded = lengthIn(ours) === 480 + i ? 500 + i : 480 + i;
    for (const { past } of [ours, theirs]) expect(past.map(lengthIn)).toContain(yielded);
    const kept = await shelf.open(firstState.instrument.id);
    expect(kept?.history.past.map(lengthIn)).toContain(yielded);
  }
});

test("a card that cannot be read is a blank one, and one without an id is none", () => {
  const blank = { name: "", savedAt: 0, finished: false, revision: 0, inFile: null };
  expect(readCard({ id: "a", name: 5, savedAt: 1e300, finished: "yes", inFile: "x" })).toEqual({
    ...blank,
    id: "a",
  });
  for (const json of [null, 7, "text", [], {}, { id: 4 }]) expect(readCard(json)).toBeNull();
});
