import { describe, expect, test, vi } from "vitest";
import { stepField } from "../../../src/store/document/edits.ts";
import type { State } from "../../../src/store/document/state.ts";
import type { Card } from "../../../src/store/shelf/shelf-entry.ts";
import { askToLast, storageRoom, toBackUp } from "../../../src/store/shelf/storage-room.ts";
import { openShelf, openTab } from "../../support/tab.ts";

/** A browser's storage that answers as told. */
const storage = (answers: Partial<StorageManager>): StorageManager => ({
  estimate: async () => ({ usage: 5, quota: 100 }),
  persisted: async () => false,
  persist: async () => false,
  getDirectory: () => Promise.reject(new Error("none")),
  ...answers,
});
const refusing = (): Promise<never> => Promise.reject(new Error("SecurityError"));

test("room is told as the browser tells it, and not at all where it tells nothing", async () => {
  expect(await storageRoom(storage({ persisted: async () => true }))).toEqual({
    size: { used: 5, quota: 100 },
    lasting: true,
  });
  const untold = { size: null, lasting: false };
  expect(await storageRoom(storage({ estimate: async () => ({}) }))).toEqual(untold);
  expect(await storageRoom(undefined)).toEqual(untold);
  expect(await storageRoom(storage({ estimate: refusing, persisted: refusing }))).toEqual(untold);
});

test("a browser that promises and cannot estimate has promised all the same", async () => {
  const { estimate: _, ...older } = storage({ persisted: async () => true });
  expect(await storageRoom(older as StorageManager)).toEqual({ size: null, lasting: true });
});

describe("asking the browser to keep things", () => {
  test("asks once, and never one that has promised", async () => {
    const persist = vi.fn(async () => true);
    expect(await askToLast(storage({ persist }))).toBe(true);
    expect(persist).toHaveBeenCalledTimes(1);
    expect(await askToLast(storage({ persist, persisted: async () => true }))).toBe(true);
    expect(persist).toHaveBeenCalledTimes(1);
  });

  test("is no fault where it is refused or not known", async () => {
    expect(await askToLast(storage({ persist: refusing }))).toBe(false);
    expect(await askToLast(undefined)).toBe(false);
  });

  test("waits for the first change on the shelf, and comes once a visit", async () => {
    const { shelf } = await openShelf();
    const { session, edit, firstSave } = openTab(shelf);
    const longer = (state: State): State => stepField(state, "body.length", 1);
    await session.start();
    await session.flush();
    expect(firstSave).not.toHaveBeenCalled();
    const save = vi.spyOn(shelf, "save").mockRejectedValueOnce(new Error("QuotaExceededError"));
    edit(longer);
    await session.flush();
    expect(firstSave).not.toHaveBeenCalled();
    save.mockRestore();
    edit(longer);
    await session.flush();
    edit(longer);
    await session.flush();
    expect(firstSave).toHaveBeenCalledTimes(1);
  });
});

test("one is told to back up what is in no file, unless the browser promises to keep it", () => {
  const card = (revision: number, inFile: number | null): Card => ({
    id: `${revision} ${inFile}`,
    name: "",
    savedAt: 0,
    finished: false,
    revision,
    inFile,
  });
  const cards = [card(1, null), card(2, 1), card(3, 3), card(0, null)];
  expect(toBackUp(cards, { size: { used: 0, quota: 0 }, lasting: false })).toBe(3);
  expect(toBackUp(cards, { size: null, lasting: false })).toBe(3);
  expect(toBackUp(cards, { size: null, lasting: true })).toBe(0);
});
