import { type Card, isInNoFile } from "./shelf-entry.ts";

/** What the browser says of the page's storage. */
export interface StorageRoom {
  /** Bytes; null where the browser does not say. */
  readonly size: { readonly used: number; readonly quota: number } | null;
  /** Whether it promises to keep what is there. One that does not say has not promised. */
  readonly lasting: boolean;
}

/** Asks the browser. Older ones, and plain http addresses, have nothing to ask or only the half of it. */
export async function storageRoom(storage: StorageManager | undefined): Promise<StorageRoom> {
  return { size: await sizeOf(storage), lasting: await isLasting(storage) };
}

async function sizeOf(storage: StorageManager | undefined): Promise<StorageRoom["size"]> {
  try {
    const { usage, quota } = (await storage?.estimate()) ?? {};
    return usage === undefined || quota === undefined ? null : { used: usage, quota };
  } catch {
    return null;
  }
}

async function isLasting(storage: StorageManager | undefined): Promise<boolean> {
  try {
    return (await storage?.persisted()) ?? false;
  } catch {
    return false;
  }
}

/** Asks the browser not to clear the page's storage, and says whether it promises. A browser that has promised is not asked again. */
export async function askToLast(storage: StorageManager | undefined): Promise<boolean> {
  try {
    return storage !== undefined && ((await isLasting(storage)) || (await storage.persist()));
  } catch {
    return false;
  }
}

/** How many instruments a builder should be told to back up: those with changes in no file, while the browser promises nothing. */
export const toBackUp = (cards: readonly Card[], room: StorageRoom): number =>
  room.lasting ? 0 : cards.filter(isInNoFile).length;
