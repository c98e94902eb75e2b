/** What is done once edits rest. */
export interface AtRest {
  readonly edited: () => void;
  /** Waits no more; whether it did. */
  readonly stop: () => boolean;
}

/** Does `act` when no edit has come for `rest` ms, or the first that waits for it has waited `longest`. */
export function atRest(act: () => void, rest: number, longest: number): AtRest {
  let since = 0;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  const stop = (): boolean => {
    if (waiting === null) return false;
    clearTimeout(waiting);
    waiting = null;
    return true;
  };
  const due = (): void => {
    waiting = null;
    act();
  };
  const edited = (): void => {
    const now = performance.now();
    if (!stop()) since = now;
    waiting = setTimeout(due, Math.min(rest, since + longest - now));
  };
  return { edited, stop };
}
