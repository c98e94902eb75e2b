import { describe, expect, test } from "vitest";
import { firstState } from "../../../src/store/document/state.ts";
import { goesOnWith, type LastShown, readLastShown } from "../../../src/store/shelf/last-shown.ts";
import { shownInTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";
import { memoryStorage, openShelf, openTab } from "../../support/tab.ts";

const shown = (id: string, time: number, run = "this"): LastShown => ({ id, run, time });

describe("a visit goes on with", () => {
  test.each<[string, LastShown | undefined, LastShown | undefined, boolean, string | undefined]>([
    ["the tab's copy, where the shelf was told of nothing", shown("a", 1), undefined, false, "a"],
    ["the tab's copy, written after the shelf was told", shown("a", 3), shown("b", 2), true, "a"],
    ["what the same visit told the shelf later", shown("a", 1), shown("b", 2), false, "b"],
    ["its own, where another visit told later", shown("a", 1), shown("b", 2, "other"), false, "a"],
    ["what another told last, in a new tab", shown("a", 1), shown("b", 2, "other"), true, "b"],
    ["what was told last, where no copy was written", undefined, shown("b", 2), true, "b"],
    ["nothing, where there is nothing", undefined, undefined, true, undefined],
  ])("%s", (_, copied, told, isNewTab, id) => {
    expect(goesOnWith(copied, told, isNewTab)).toBe(id);
  });
});

test("a tab's copy says what was on screen, in which visit and when", () => {
  const storage = memoryStorage();
  expect(shownInTabCopy(storage)).toBeUndefined();
  const before = Date.now();
  writeTabCopy(storage, { ...firstState, run: "this" });
  const written = shownInTabCopy(storage);
  expect(written).toMatchObject({ id: firstState.instrument.id, run: "this" });
  expect(written?.time).toBeGreaterThanOrEqual(before);
});

test.each([null, "text", 7, {}, { id: 1, run: "a", time: 2 }, { id: "a", run: "b" }])(
  "what cannot be read is none: %j",
  (json) => expect(readLastShown(json)).toBeUndefined(),
);

test("a session tells the shelf what is on screen, at its start and with every change of instruments", async () => {
  const { shelf } = await openShelf();
  const { session, edit } = openTab(shelf, { ...firstState, run: "this" }, { now: () => 5 });
  await session.start();
  await session.flush();
  expect(await shelf.lastShown()).toEqual(shown(firstState.instrument.id, 5));
  edit((state) => ({ ...state, instrument: { ...state.instrument, id: "next" } }));
  await session.flush();
  expect(await shelf.lastShown()).toEqual(shown("next", 5));
});
