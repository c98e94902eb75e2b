import { useCallback, useEffect, useState } from "react";
import type { Card } from "../../store/shelf/shelf-entry.ts";
import {
  askToLast,
  type StorageRoom,
  storageRoom,
  toBackUp,
} from "../../store/shelf/storage-room.ts";

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

interface Props {
  readonly room: StorageRoom | null;
  readonly onAsk: () => Promise<boolean>;
}

/** How much room the browser gives, and whether it may clear it. */
export function Storage({ room, onAsk }: Props) {
  const [refused, setRefused] = useState(false);
  // Not asked yet: there is nothing to say.
  if (room === null) return null;
  return (
    <section className="shelf-storage" aria-labelledby="shelf-storage">
      <h3 id="shelf-storage">Storage</h3>
      <p>
        {room.size === null
          ? "This browser does not say how much room it gives the page."
          : `${megabytes(room.size.used)} used of the ${megabytes(room.size.quota)} this browser gives the page.`}{" "}
        {room.lasting
          ? "It keeps them until you clear them."
          : "It may clear them when the device runs short."}
      </p>
      {window.isSecureContext === false && (
        <p>
          This page was opened at an http address. A browser gives such a page less: it opens only
          while the computer that serves it is on, and cannot ask for its storage to be kept. Export
          the shelf now and then.
        </p>
      )}
      {!room.lasting && navigator.storage !== undefined && (
        <div className="shelf-line">
          <button
            type="button"
            onClick={() => void onAsk().then((lasting) => setRefused(!lasting))}
          >
            Ask the browser to keep it
          </button>
          <span role="status">{refused ? "It would not promise." : ""}</span>
        </div>
      )}
    </section>
  );
}

/** Told while the browser may clear what is in no file yet. */
export function BackUpNudge({
  cards,
  room,
}: {
  readonly cards: readonly Card[];
  readonly room: StorageRoom | null;
}) {
  // Not asked yet is no reason for a warning; no answer is.
  const count = room === null ? 0 : toBackUp(cards, room);
  if (count === 0) return null;
  return (
    <p className="shelf-nudge">
      {count === 1 ? "1 instrument has" : `${count} instruments have`} changes in no file, and this
      browser may clear its storage when the device runs short. Export the shelf now and then.
    </p>
  );
}

const megabytes = (bytes: number): string =>
  bytes < 1e9 ? `${(bytes / 1e6).toFixed(1)} MB` : `${(bytes / 1e9).toFixed(0)} GB`;
