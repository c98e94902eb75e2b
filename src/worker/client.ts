import type { Answers, Job, JobKind, Progress, Report, Request } from "./messages.ts";

/** What the client needs of a worker; `Worker` is one. */
export interface WorkerHandle {
  postMessage(request: Request): void;
  addEventListener(type: "message", listener: (event: { readonly data: Report }) => void): void;
  addEventListener(type: "error", listener: () => void): void;
}

export interface JobListener<Kind extends JobKind> {
  readonly onProgress: (progress: Progress<Kind>) => void;
  /** The worker could not be started, or broke. */
  readonly onFailure: () => void;
}

interface RunningJob {
  readonly kind: JobKind;
  readonly onProgress: (progress: Progress) => void;
  readonly onFailure: () => void;
}

/**
 * Runs jobs in a worker, which the first job starts. Of each kind only the latest job is run; what
 * comes late from an earlier one is not passed on.
 */
export class WorkerClient {
  readonly #start: () => WorkerHandle;
  #worker: WorkerHandle | null = null;
  #lastId = 0;
  readonly #running = new Map<number, RunningJob>();

  constructor(start: () => WorkerHandle) {
    this.#start = start;
  }

  /** Runs a job in place of any of its kind; returns what stops it. */
  run<Kind extends JobKind>(
    job: Extract<Job, { readonly kind: Kind }>,
    { onProgress, onFailure }: JobListener<Kind>,
  ): () => void {
    this.#lastId++;
    const id = this.#lastId;
    for (const [earlier, { kind }] of this.#running) {
      if (kind === job.kind) this.#running.delete(earlier);
    }
    this.#running.set(id, {
      kind: job.kind,
      onProgress: ({ share, answer }) => onProgress({ share, answer: answer as Answers[Kind] }),
      onFailure,
    });
    this.#post({ id, job });
    return () => {
      if (this.#running.delete(id)) this.#post({ id, stop: true });
    };
  }

  #post(request: Request): void {
    try {
      this.#worker ??= this.#started();
      this.#worker.postMessage(request);
    } catch {
      this.#fail();
    }
  }

  #started(): WorkerHandle {
    const worker = this.#start();
    worker.addEventListener("message", ({ data }) => this.#receive(data));
    worker.addEventListener("error", () => this.#fail());
    return worker;
  }

  #receive({ id, progress }: Report): void {
    const job = this.#running.get(id);
    if (job === undefined) return;
    if (progress.share === 1) this.#running.delete(id);
    job.onProgress(progress);
  }

  /** Every running job is told; the next one starts a new worker. */
  #fail(): void {
    this.#worker = null;
    const running = [...this.#running.values()];
    this.#running.clear();
    for (const { onFailure } of running) onFailure();
  }
}

/** The page's own worker. */
export const workerClient = new WorkerClient(
  () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" }),
);
