import { useCallback, useEffect, useRef, useState } from "react";
import { workerClient } from "../worker/client.ts";
import type { Job, JobKind, Progress } from "../worker/messages.ts";

export interface Running<Kind extends JobKind> {
  readonly state: "waiting" | "running" | "stopped" | "done" | "failed";
  /** The latest there is, perhaps of an earlier job while the next has nothing to show. */
  readonly progress: Progress<Kind> | null;
  /** The job that `progress` is of. */
  readonly shown: Extract<Job, { readonly kind: Kind }> | null;
  readonly stop: () => void;
  readonly again: () => void;
}

/** A pause in typing, after which the work is begun. */
const settle = 150;

/** After which a worker that did not come is asked for again: a network comes and goes. */
const pause = 5_000;

/**
 * Has the worker do a job, and again whenever the job is another one. `job` must be the same object
 * while nothing of it changes; null asks for nothing.
 */
export function useJob<Kind extends JobKind>(
  job: Extract<Job, { readonly kind: Kind }> | null,
): Running<Kind> {
  const [state, setState] = useState<Running<Kind>["state"]>("waiting");
  const [{ progress, shown }, setLatest] = useState<Pick<Running<Kind>, "progress" | "shown">>({
    progress: null,
    shown: null,
  });
  const stopping = useRef<() => void>(() => {});
  const begin = useCallback(() => {
    if (job === null) return;
    setState("running");
    stopping.current = workerClient.run<Kind>(job, {
      onProgress: (latest) => {
        setLatest({ progress: latest, shown: job });
        if (latest.share === 1) setState("done");
      },
      onFailure: () => setState("failed"),
    });
  }, [job]);
  useEffect(() => {
    setState("waiting");
    const timer = setTimeout(begin, settle);
    return () => {
      clearTimeout(timer);
      stopping.current();
    };
  }, [begin]);
  useEffect(() => {
    if (state !== "failed") return;
    const timer = setTimeout(begin, pause);
    addEventListener("online", begin);
    return () => {
      clearTimeout(timer);
      removeEventListener("online", begin);
    };
  }, [state, begin]);
  const stop = useCallback(() => {
    stopping.current();
    setState((before) => (before === "running" ? "stopped" : before));
  }, []);
  return { state, progress, shown, stop, again: begin };
}
