import { useEffect, useState } from "react";

interface Room {
  readonly used: number;
  readonly quota: number;
  readonly lasting: boolean;
}

/** How much room the browser gives, and whether it may clear it; a nudge to back up where it may. */
export function Storage() {
  const [room, setRoom] = useState<Room | null>(null);
  const [asked, setAsked] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the answer may change once it was asked.
  useEffect(() => {
    void readRoom().then(setRoom);
  }, [asked]);
  if (room === null) return null;
  const ask = (): void => {
    void navigator.storage.persist().finally(() => setAsked(true));
  };
  return (
    <section aria-label="Storage">
      <h3>Storage</h3>
      <p>
        {megabytes(room.used)} of {megabytes(room.quota)} used.{" "}
        {room.lasting
          ? "The browser keeps it until you clear it."
          : "The browser may clear it when the device runs short: export the shelf now and then."}
      </p>
      {!room.lasting && (
        <button type="button" onClick={ask}>
          {asked ? "It would not promise" : "Ask the browser to keep it"}
        </button>
      )}
    </section>
  );
}

async function readRoom(): Promise<Room | null> {
  if (navigator.storage === undefined) return null;
  const { usage = 0, quota = 0 } = await navigator.storage.estimate();
  return { used: usage, quota, lasting: await navigator.storage.persisted() };
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
