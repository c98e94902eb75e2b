import { type Card, isInNoFile } from "./shelf-entry.ts";

/** How much room the browser gives the page, and whether it promises to keep what is there. */
export interface StorageRoom {
  /** Bytes. */
  readonly used: number;
  readonly quota: number;
  readonly lasting: boolean;
}

/** What the browser says of its storage; null where it says nothing. */
export async function storageRoom(
  storage: StorageManager | undefined,
): Promise<StorageRoom | null> {
  try {
    if (storage === undefined) return null;
    const { usage = 0, quota = 0 } = await storage.estimate();
    return { used: usage, quota, lasting: await storage.persisted() };
  } catch {
    return null;
  }
}

/** Asks the browser not to clear the page's storage, and says whether it promises. A browser that has promised is not asked again. */
export async function askToLast(storage: StorageManager | undefined): Promise<boolean> {
  try {
    return storage !== undefined && ((await storage.persisted()) || (await storage.persist()));
  } catch {
    return false;
  }
}

/** How many instruments a builder should be told to back up: those with changes in no file, while the browser promises nothing. */
export const toBackUp = (cards: readonly Card[], room: StorageRoom | null): number =>
  room?.lasting === true ? 0 : cards.filter(isInNoFile).length;
