import { mapOf } from "../profile/comparison/map.ts";
import { bestContact, familyOf } from "../profile/sticks/shared-shim.ts";
import { familyMends, mendsForShim } from "../profile/sticks/shared-shim-changes.ts";
import { CertaintyRun } from "../profile/uncertainty/uncertainty.ts";
import type { CertaintyJob, FamilyAnswer, FamilyJob, Job, Progress } from "./messages.ts";

/** What a job needs of where it is done. */
export interface Bench {
  readonly report: (progress: Progress) => void;
  /** Lets what waits, such as a request to stop, be heard. */
  readonly pause: () => Promise<void>;
  readonly stopped: () => boolean;
  readonly now: () => number;
}

/** Does a job to its end, or until it is stopped. */
export async function work(job: Job, bench: Bench): Promise<void> {
  // A later job of this kind may wait already: then this one is not begun.
  await bench.pause();
  if (bench.stopped()) return;
  switch (job.kind) {
    case "certainty":
      return draw(job, bench);
    case "map":
      return bench.report({ share: 1, answer: mapOf(job.instrument, job.asked) });
    case "family":
      return bench.report({ share: 1, answer: familyAnswer(job) });
  }
}

/** Draws between pauses: some tens of milliseconds. */
const chunk = 10_000;
/** Milliseconds between reports. */
const reportEvery = 120;

async function draw({ asked, draws }: CertaintyJob, bench: Bench): Promise<void> {
  const run = CertaintyRun.of(asked);
  if (run === null) return bench.report({ share: 1, answer: null });
  let last = bench.now();
  while (run.count < draws) {
    run.run(Math.min(chunk, draws - run.count));
    await bench.pause();
    if (bench.stopped()) return;
    const now = bench.now();
    if (run.count === draws || now - last < reportEvery) continue;
    last = now;
    bench.report({ share: run.count / draws, answer: run.result() });
  }
  bench.report({ share: 1, answer: run.result() });
}

function familyAnswer({ instruments, contact, shim }: FamilyJob): FamilyAnswer {
  const family = contact === "best" ? bestContact(instruments) : familyOf(instruments, null);
  return {
    family,
    mends: family.shared === null ? familyMends(family) : [],
    forShim: shim === null ? [] : mendsForShim(family, shim),
  };
}
