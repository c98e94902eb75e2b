import type { Instrument } from "../instrument/instrument.ts";
import { readingTracingFile } from "../instrument/tracing-file.ts";
import { mapIn } from "../profile/comparison/map.ts";
import { type OnStickResult, readyForSticks, type Stick } from "../profile/sticks/on-stick.ts";
import { bestContact, sharedShimOf } from "../profile/sticks/shared-shim.ts";
import { changesForShim, changesToShare } from "../profile/sticks/shared-shim-changes.ts";
import { stickPlanOf } from "../profile/sticks/stick-plan.ts";
import { cheapestChange, stickWantsOf } from "../profile/sticks/wanted-stick.ts";
import { UncertaintyRun } from "../profile/uncertainty/uncertainty.ts";
import type { Job, Progress, SharedShimAnswer, SharedShimJob, UncertaintyJob } from "./messages.ts";

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
      return inSteps(mapIn(job.instrument, job.asked), (share) => share, context);
    case "shared-shim":
      return context.report({ share: 1, answer: sharedShimAnswer(job) });
    case "on-stick":
      return inTurn(job.instruments, onStickOf(job.stick), context);
    case "stick-wants":
      return inTurn(job.instruments, (one) => stickWantsOf(one, job.owned), context);
    case "stick-plan":
      return context.report({ share: 1, answer: stickPlanOf(job.wants) });
    case "stick-changes":
      return inTurn(
        job.asked,
        ({ instrument, stick }) => cheapestChange(instrument, stick),
        context,
      );
    case "tracing":
      // The text's end is not the end: the longest line is still to be made of it.
      return inSteps(readingTracingFile(job.text), (share) => 0.99 * share, context);
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

/** Called between steps it pauses now and then, and says whether to stop, to report or just to go on. */
function pacerFor(context: JobContext): () => Promise<"stop" | "report" | "go on"> {
  let [paused, reported] = [context.now(), context.now()];
  return async () => {
    const now = context.now();
    if (now - paused < pauseEvery) return "go on";
    await context.pause();
    if (context.stopped()) return "stop";
    paused = now;
    if (now - reported < reportEvery) return "go on";
    reported = now;
    return "report";
  };
}

/** Takes steps between pauses, and tells now and then what share of all they say is done. */
async function inSteps<Answer extends Progress["answer"]>(
  steps: Generator<number, Answer>,
  shareOf: (step: number) => number,
  context: JobContext,
): Promise<void> {
  const pace = pacerFor(context);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return context.report({ share: 1, answer: step.value });
    const next = await pace();
    if (next === "stop") return;
    if (next === "report") context.report({ share: shareOf(step.value), answer: null });
  }
}

/** Takes items one after another between pauses, and tells now and then what has come of those done. */
async function inTurn<Item, Made>(
  items: readonly Item[],
  make: (item: Item) => Made,
  context: JobContext & { readonly report: (progress: { share: number; answer: Made[] }) => void },
): Promise<void> {
  const pace = pacerFor(context);
  const made: Made[] = [];
  for (const item of items) {
    made.push(make(item));
    const next = await pace();
    if (next === "stop") return;
    const share = made.length / items.length;
    if (next === "report" && share < 1) context.report({ share, answer: made });
  }
  context.report({ share: 1, answer: made });
}

const onStickOf =
  ({ thickness, width }: Stick) =>
  (instrument: Instrument): OnStickResult =>
    readyForSticks(instrument, width)(thickness);

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
