import { readingTracingFile } from "../instrument/tracing-file.ts";
import { mapIn } from "../profile/comparison/map.ts";
import { bestContact, sharedShimOf } from "../profile/sticks/shared-shim.ts";
import { changesForShim, changesToShare } from "../profile/sticks/shared-shim-changes.ts";
import { UncertaintyRun } from "../profile/uncertainty/uncertainty.ts";
import type {
  Job,
  MapJob,
  Progress,
  SharedShimAnswer,
  SharedShimJob,
  TracingJob,
  UncertaintyJob,
} from "./messages.ts";

/** What a job needs of whoever runs it. */
export interface JobContext {
  readonly report: (progress: Progress) => void;
  /** Lets what waits, such as a request to stop, be heard. */
  readonly pause: () => Promise<void>;
  readonly stopped: () => boolean;
  readonly now: () => number;
}

/** Does a job to its end, or until it is stopped. */
export async function runJob(job: Job, context: JobContext): Promise<void> {
  // A later job of this kind may wait already: then this one is not begun.
  await context.pause();
  if (context.stopped()) return;
  switch (job.kind) {
    case "uncertainty":
      return drawSamples(job, context);
    case "map":
      return drawMap(job, context);
    case "shared-shim":
      return context.report({ share: 1, answer: sharedShimAnswer(job) });
    case "tracing":
      return readTracing(job, context);
  }
}

/** Draws between pauses: some tens of milliseconds. */
const chunk = 10_000;
/** Milliseconds between reports. */
const reportEvery = 120;

async function drawSamples({ asked, draws }: UncertaintyJob, context: JobContext): Promise<void> {
  const run = UncertaintyRun.of(asked);
  if (run === null) return context.report({ share: 1, answer: null });
  let last = context.now();
  while (run.count < draws) {
    run.run(Math.min(chunk, draws - run.count));
    await context.pause();
    if (context.stopped()) return;
    const now = context.now();
    if (run.count === draws || now - last < reportEvery) continue;
    last = now;
    context.report({ share: run.count / draws, answer: run.result() });
  }
  context.report({ share: 1, answer: run.result() });
}

/** Milliseconds between pauses. */
const pauseEvery = 20;

async function drawMap({ instrument, asked }: MapJob, context: JobContext): Promise<void> {
  const drawing = mapIn(instrument, asked);
  let paused = context.now();
  for (let step = drawing.next(); ; step = drawing.next()) {
    if (step.done) return context.report({ share: 1, answer: step.value });
    if (context.now() - paused < pauseEvery) continue;
    await context.pause();
    if (context.stopped()) return;
    paused = context.now();
  }
}

async function readTracing({ text }: TracingJob, context: JobContext): Promise<void> {
  const reading = readingTracingFile(text);
  let [paused, reported] = [context.now(), context.now()];
  for (let step = reading.next(); ; step = reading.next()) {
    if (step.done) return context.report({ share: 1, answer: step.value });
    const now = context.now();
    if (now - paused < pauseEvery) continue;
    await context.pause();
    if (context.stopped()) return;
    paused = now;
    if (now - reported < reportEvery) continue;
    reported = now;
    // The text's end is not the end: the longest line is still to be made of it.
    context.report({ share: 0.99 * step.value, answer: null });
  }
}

function sharedShimAnswer({
  instruments,
  contact,
  leastContact,
  shim,
}: SharedShimJob): SharedShimAnswer {
  const sharedShim =
    contact === "best" ? bestContact(instruments, leastContact) : sharedShimOf(instruments, null);
  return {
    sharedShim,
    changes: sharedShim.shared === null ? changesToShare(sharedShim) : [],
    forShim: shim === null ? [] : changesForShim(sharedShim, shim),
  };
}
