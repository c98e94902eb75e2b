import { describe, expect, it, vi } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { UncertaintyRun } from "../../src/profile/uncertainty/uncertainty.ts";
import { WorkerClient, type WorkerHandle } from "../../src/worker/client.ts";
import { runJob } from "../../src/worker/jobs.ts";
import type { Progress, Report, Request, UncertaintyJob } from "../../src/worker/messages.ts";

vi.setConfig({ testTimeout: 30_000 });

const asked = { instrument: defaultInstrument, shape: "normal", seed: 3 } as const;
const drawing = (draws: number): UncertaintyJob => ({ kind: "uncertainty", draws, asked });

/** Does a job with a clock that goes on by 50 ms at each look. */
async function done(job: Parameters<typeof runJob>[0], stopAfter = Number.POSITIVE_INFINITY) {
  const reports: Progress[] = [];
  let [clock, pauses] = [0, 0];
  await runJob(job, {
    report: (progress) => reports.push(progress),
    pause: async () => {
      pauses++;
    },
    stopped: () => pauses > stopAfter,
    now: () => {
      clock += 50;
      return clock;
    },
  });
  return reports;
}

describe("a job", () => {
  it("draws in chunks, tells how far it is, and ends with what one run gives", async () => {
    const reports = await done(drawing(65_000));
    const shares = reports.map(({ share }) => share);
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(shares.filter((share) => share === 1)).toHaveLength(1);
    const run = UncertaintyRun.of(asked);
    run?.run(65_000);
    expect(reports.at(-1)?.answer).toEqual(run?.result());
  });

  it("stops between chunks, and then says no more", async () => {
    const reports = await done(drawing(1_000_000), 5);
    expect(reports.length).toBeGreaterThan(0);
    expect(reports.every(({ share }) => share < 0.1)).toBe(true);
  });

  it("does not begin what was replaced while it waited", async () => {
    expect(
      await done(
        { kind: "shared-shim", instruments: presets, contact: "own", leastContact: 10, shim: 8 },
        0,
      ),
    ).toEqual([]);
  });

  it("reads a drawing between pauses, and leaves it off when it is stopped", async () => {
    const text = `<svg>${'<path d="M0 0L5 5L9 0"/>'.repeat(50)}</svg>`;
    const reports = await done({ kind: "tracing", text });
    expect(reports.length).toBeGreaterThan(2);
    expect(reports.at(-1)).toMatchObject({
      share: 1,
      answer: { ok: true, drawing: { lines: 50, unit: null } },
    });
    const left = await done({ kind: "tracing", text }, 5);
    expect(left.every(({ share }) => share < 0.5)).toBe(true);
  });

  it("draws a map between pauses, and leaves it off when it is stopped", async () => {
    const axis = (path: "target.value" | "dome.dishRadius", range: readonly [number, number]) => ({
      path,
      range,
    });
    const map = {
      kind: "map",
      instrument: defaultInstrument,
      asked: {
        across: axis("target.value", [5, 13]),
        up: axis("dome.dishRadius", [4500, 13_000]),
        outcome: "saddleExposure",
        hold: "shim",
      },
    } as const;
    const reports = await done(map);
    const shares = reports.map(({ share }) => share);
    expect(shares.length).toBeGreaterThan(10);
    expect(shares).toEqual([...new Set(shares)].sort((a, b) => a - b));
    expect(reports.at(-1)).toMatchObject({ share: 1, answer: { present: expect.any(Array) } });
    const left = await done(map, 20);
    expect(left.length).toBeGreaterThan(2);
    expect(left.every(({ share, answer }) => share < 0.9 && answer === null)).toBe(true);
  });

  it("answers nothing where there is no plan", async () => {
    const far = { ...defaultInstrument, target: { kind: "pitch", value: 40 } } as const;
    const reports = await done({
      kind: "uncertainty",
      draws: 10,
      asked: { ...asked, instrument: far },
    });
    expect(reports).toEqual([{ share: 1, answer: null }]);
  });
});

/** A worker that keeps what it is asked, and says what it is told to. */
class FakeWorker implements WorkerHandle {
  readonly requests: Request[] = [];
  #onMessage: (event: { readonly data: Report }) => void = () => {};
  #onError: () => void = () => {};

  postMessage(request: Request): void {
    this.requests.push(request);
  }

  addEventListener(
    type: "message" | "error",
    listener: (event: { readonly data: Report }) => void,
  ) {
    if (type === "message") this.#onMessage = listener;
    else this.#onError = listener as () => void;
  }

  say(id: number, share: number): void {
    this.#onMessage({ data: { id, progress: { share, answer: null } } });
  }

  break(): void {
    this.#onError();
  }
}

function clientOf(worker: FakeWorker) {
  const client = new WorkerClient(() => worker);
  const heard: string[] = [];
  const ask = (name: string) =>
    client.run<"uncertainty">(drawing(10), {
      onProgress: ({ share }) => heard.push(`${name} ${share}`),
      onFailure: () => heard.push(`${name} failed`),
    });
  return { ask, heard };
}

describe("the worker client", () => {
  it("passes on the latest job's reports only", () => {
    const worker = new FakeWorker();
    const { ask, heard } = clientOf(worker);
    ask("first");
    ask("second");
    worker.say(1, 0.5);
    worker.say(2, 0.5);
    worker.say(2, 1);
    worker.say(2, 1);
    expect(heard).toEqual(["second 0.5", "second 1"]);
  });

  it("stops what runs, once, and hears no more of it", () => {
    const worker = new FakeWorker();
    const { ask, heard } = clientOf(worker);
    const stop = ask("one");
    stop();
    stop();
    worker.say(1, 0.5);
    expect(worker.requests.slice(1)).toEqual([{ id: 1, stop: true }]);
    expect(heard).toEqual([]);
  });

  it("tells all that wait when the worker breaks, and starts another for the next job", () => {
    const first = new FakeWorker();
    const second = new FakeWorker();
    const workers = [first, second];
    const client = new WorkerClient(() => workers.shift() ?? second);
    const failed: number[] = [];
    const ask = () =>
      client.run<"uncertainty">(drawing(10), {
        onProgress: () => {},
        onFailure: () => failed.push(1),
      });
    ask();
    first.break();
    ask();
    expect(failed).toEqual([1]);
    expect(second.requests).toHaveLength(1);
  });

  it("says so when no worker can be had", () => {
    const client = new WorkerClient(() => {
      throw new Error("no workers here");
    });
    let failed = false;
    client.run<"uncertainty">(drawing(10), {
      onProgress: () => {},
      onFailure: () => {
        failed = true;
      },
    });
    expect(failed).toBe(true);
  });
});
