import { useEffect, useState } from "react";

export type Wakefulness = "awake" | "asleep" | "unknown here";

/**
 * Keeps the screen awake while the view is open and the page in sight, where the browser can. The lock is
 * let go on leaving, and asked for again on coming back.
 */
export function useWakeLock(): Wakefulness {
  const [state, setState] = useState<Wakefulness>("asleep");
  useEffect(() => {
    if (!("wakeLock" in navigator)) {
      setState("unknown here");
      return;
    }
    let lock: WakeLockSentinel | null = null;
    let left = false;
    const release = (): void => {
      void lock?.release().catch(() => {});
      lock = null;
    };
    const request = async (): Promise<void> => {
      if (document.visibilityState !== "visible" || lock !== null) return;
      try {
        const got = await navigator.wakeLock.request("screen");
        if (left || lock !== null) {
          await got.release();
          return;
        }
        lock = got;
        setState("awake");
        got.addEventListener("release", () => {
          if (lock === got) lock = null;
          setState("asleep");
        });
      } catch {
        // A browser that refuses, on a low battery for one, is told of by what stands on the page.
        setState("asleep");
      }
    };
    const onVisibility = (): void => {
      if (document.visibilityState === "visible") void request();
      else release();
    };
    void request();
    document.addEventListener("visibilitychange", onVisibility);
    return () => {
      left = true;
      document.removeEventListener("visibilitychange", onVisibility);
      release();
    };
  }, []);
  return state;
}
