import type { Answers, Job, JobKind, Progress, Report, Request } from "./messages.ts";

/** What the page needs of a worker; `Worker` is one. */
export interface Hand {
  postMessage(request: Request): void;
  addEventListener(type: "message", heard: (event: { readonly data: Report }) => void): void;
  addEventListener(type: "error", heard: () => void): void;
}

/** Hears how a job goes. */
export interface Hearer<Kind extends JobKind> {
  readonly heard: (progress: Progress<Kind>) => void;
  /** The worker could not be had, or broke. */
  readonly failed: () => void;
}

interface Waiting {
  readonly kind: JobKind;
  readonly heard: (progress: Progress) => void;
  readonly failed: () => void;
}

/**
 * The front door to the worker. Of each kind only the latest job is done; what comes late from an
 * earlier one is not passed on. The worker is started by the first job.
 */
export class Desk {
  readonly #hire: () => Hand;
  #hand: Hand | null = null;
  #lastId = 0;
  readonly #waiting = new Map<number, Waiting>();

  constructor(hire: () => Hand) {
    this.#hire = hire;
  }

  /** Asks for a job, in place of any of its kind; returns what stops it. */
  ask<Kind extends JobKind>(
    job: Extract<Job, { readonly kind: Kind }>,
    { heard, failed }: Hearer<Kind>,
  ): () => void {
    this.#lastId++;
    const id = this.#lastId;
    for (const [earlier, { kind }] of this.#waiting) {
      if (kind === job.kind) this.#waiting.delete(earlier);
    }
    this.#waiting.set(id, {
      kind: job.kind,
      heard: ({ share, answer }) => heard({ share, answer: answer as Answers[Kind] }),
      failed,
    });
    this.#post({ id, job });
    return () => {
      if (this.#waiting.delete(id)) this.#post({ id, stop: true });
    };
  }

  #post(request: Request): void {
    try {
      this.#hand ??= this.#hired();
      this.#hand.postMessage(request);
    } catch {
      this.#fail();
    }
  }

  #hired(): Hand {
    const hand = this.#hire();
    hand.addEventListener("message", ({ data }) => this.#hear(data));
    hand.addEventListener("error", () => this.#fail());
    return hand;
  }

  #hear({ id, progress }: Report): void {
    const waiting = this.#waiting.get(id);
    if (waiting === undefined) return;
    if (progress.share === 1) this.#waiting.delete(id);
    waiting.heard(progress);
  }

  /** All that waited is told; the next job is given to a new worker. */
  #fail(): void {
    this.#hand = null;
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { failed } of waiting) failed();
  }
}

/** The page's own worker. */
export const pageDesk = new Desk(
  () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" }),
);
