/** Pauses before a part is asked for again, ms; the last of them before every further time. */
const pauses = [1_000, 5_000, 20_000, 60_000] as const;

interface Asked<Part> {
  readonly onPart: (part: Part) => void;
  /** Each time it does not come. */
  readonly onFailure: () => void;
}

/**
 * Fetches code that comes late, again and again until it is there: a network comes and goes. A network
 * that comes back ends the pause. Returns what gives it up.
 */
export function fetchLate<Part>(
  load: () => Promise<Part>,
  { onPart, onFailure }: Asked<Part>,
): () => void {
  let tries = 0;
  let given = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const wait = (): void => {
    if (given) return;
    onFailure();
    waiting = setTimeout(ask, pauses[Math.min(tries, pauses.length - 1)]);
    addEventListener("online", ask, { once: true });
    tries += 1;
  };
  const stopWaiting = (): void => {
    clearTimeout(waiting);
    removeEventListener("online", ask);
  };
  const ask = (): void => {
    stopWaiting();
    void load().then((part) => {
      if (!given) onPart(part);
    }, wait);
  };
  ask();
  return () => {
    given = true;
    stopWaiting();
  };
}
