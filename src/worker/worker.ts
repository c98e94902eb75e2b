import { runJob } from "./jobs.ts";
import type { JobKind, Report, Request } from "./messages.ts";

/** The worker itself: of each kind it does the latest job only. */
const current = new Map<JobKind, number>();

/** A message to itself comes after those already waiting, and unlike a timer is never held back. */
const channel = new MessageChannel();
const paused: (() => void)[] = [];
channel.port1.onmessage = () => paused.shift()?.();

const pause = (): Promise<void> =>
  new Promise((resume) => {
    paused.push(resume);
    channel.port2.postMessage(null);
  });

addEventListener("message", ({ data }: MessageEvent<Request>) => {
  if ("stop" in data) {
    for (const [kind, id] of current) if (id === data.id) current.delete(kind);
    return;
  }
  const { id, job } = data;
  current.set(job.kind, id);
  void runJob(job, {
    report: (progress) => {
      const report: Report = { id, progress };
      postMessage(report);
    },
    pause,
    stopped: () => current.get(job.kind) !== id,
    now: () => performance.now(),
  });
});
