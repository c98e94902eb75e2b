import { useEffect, useState } from "react";

type WakeLockState = "held" | "released" | "unsupported";

/**
 * Keeps the screen awake while the view is open and the page in sight, where the browser can. The lock is
 * let go on leaving, and asked for again on coming back.
 */
function useWakeLock(): WakeLockState {
  const [state, setState] = useState<WakeLockState>("released");
  useEffect(() => {
    if (!("wakeLock" in navigator)) {
      setState("unsupported");
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
        setState("held");
        got.addEventListener("release", () => {
          if (lock === got) lock = null;
          setState("released");
        });
      } catch {
        // A browser that refuses, on a low battery for one, is told of by what stands on the page.
        setState("released");
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

const said: Readonly<Record<WakeLockState, string>> = {
  held: "The screen is kept awake while this view is open.",
  released: "The screen may go dark: the browser does not keep it awake now.",
  unsupported: "This browser cannot keep the screen awake: set the tablet’s own timer longer.",
};

const plainHttp =
  "Opened at an http address, a page cannot keep the screen awake: set the tablet’s own timer longer.";

/** Keeps the screen awake, and says whether it does. */
export function WakeLockLine() {
  const state = useWakeLock();
  const insecure = state === "unsupported" && window.isSecureContext === false;
  return <p className="bench-aside">{insecure ? plainHttp : said[state]}</p>;
}
