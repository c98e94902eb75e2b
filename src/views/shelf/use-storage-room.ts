import { useCallback, useEffect, useState } from "react";
import { askToLast, type StorageRoom, storageRoom } from "../../store/storage-room.ts";

/** What the browser says of its storage, read again when `changed` is another; and how to ask it to keep what is there. */
export function useStorageRoom(changed: unknown): [StorageRoom | null, () => Promise<boolean>] {
  const [room, setRoom] = useState<StorageRoom | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is kept changes with it.
  useEffect(() => {
    void storageRoom(navigator.storage).then(setRoom);
  }, [changed]);
  const ask = useCallback(async () => {
    const lasting = await askToLast(navigator.storage);
    setRoom(await storageRoom(navigator.storage));
    return lasting;
  }, []);
  return [room, ask];
}
