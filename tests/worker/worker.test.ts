import { describe, expect, it, vi } from "vitest";
import { presets } from "../../src/instrument/presets.ts";
import { defaultInstrument } from "../../src/instrument/schema.ts";
import { CertaintyRun } from "../../src/profile/uncertainty/uncertainty.ts";
import { Desk, type Hand } from "../../src/worker/client.ts";
import { work } from "../../src/worker/jobs.ts";
import type { CertaintyJob, Progress, Report, Request } from "../../src/worker/messages.ts";

vi.setConfig({ testTimeout: 30_000 });

const asked = { instrument: defaultInstrument, shape: "normal", seed: 3 } as const;
const drawing = (draws: number): CertaintyJob => ({ kind: "certainty", draws, asked });

/** Does a job with a clock that goes on by 50 ms at each look. */
async function done(job: Parameters<typeof work>[0], stopAfter = Number.POSITIVE_INFINITY) {
  const reports: Progress[] = [];
  let [clock, pauses] = [0, 0];
  await work(job, {
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

describe("the worker's work", () => {
  it("draws in chunks, tells how far it is, and ends with what one run gives", async () => {
    const reports = await done(drawing(65_000));
    const shares = reports.map(({ share }) => share);
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(shares.filter((share) => share === 1)).toHaveLength(1);
    const run = CertaintyRun.of(asked);
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
      await done({ kind: "family", instruments: presets, contact: "own", shim: 8 }, 0),
    ).toEqual([]);
  });

  it("answers nothing where there is no plan", async () => {
    const far = { ...defaultInstrument, target: { kind: "pitch", value: 40 } } as const;
    const reports = await done({
      kind: "certainty",
      draws: 10,
      asked: { ...asked, instrument: far },
    });
    expect(reports).toEqual([{ share: 1, answer: null }]);
  });
});

/** A worker that keeps what it is asked, and says what it is told to. */
class Puppet implements Hand {
  readonly requests: Request[] = [];
  #heard: (event: { readonly data: Report }) => void = () => {};
  #broke: () => void = () => {};

  postMessage(request: Request): void {
    this.requests.push(request);
  }

  addEventListener(type: "message" | "error", heard: (event: { readonly data: Report }) => void) {
    if (type === "message") this.#heard = heard;
    else this.#broke = heard as () => void;
  }

  say(id: number, share: number): void {
    this.#heard({ data: { id, progress: { share, answer: null } } });
  }

  break(): void {
    this.#broke();
  }
}

function deskWith(puppet: Puppet) {
  const desk = new Desk(() => puppet);
  const heard: string[] = [];
  const ask = (name: string) =>
    desk.ask<"certainty">(drawing(10), {
      heard: ({ share }) => heard.push(`${name} ${share}`),
      failed: () => heard.push(`${name} failed`),
    });
  return { ask, heard };
}

describe("the desk", () => {
  it("passes on the latest job's reports only", () => {
    const puppet = new Puppet();
    const { ask, heard } = deskWith(puppet);
    ask("first");
    ask("second");
    puppet.say(1, 0.5);
    puppet.say(2, 0.5);
    puppet.say(2, 1);
    puppet.say(2, 1);
    expect(heard).toEqual(["second 0.5", "second 1"]);
  });

  it("stops what runs, once, and hears no more of it", () => {
    const puppet = new Puppet();
    const { ask, heard } = deskWith(puppet);
    const stop = ask("one");
    stop();
    stop();
    puppet.say(1, 0.5);
    expect(puppet.requests.slice(1)).toEqual([{ id: 1, stop: true }]);
    expect(heard).toEqual([]);
  });

  it("tells all that wait when the worker breaks, and hires another for the next job", () => {
    const first = new Puppet();
    const second = new Puppet();
    const hands = [first, second];
    const desk = new Desk(() => hands.shift() ?? second);
    const failed: number[] = [];
    const ask = () =>
      desk.ask<"certainty">(drawing(10), { heard: () => {}, failed: () => failed.push(1) });
    ask();
    first.break();
    ask();
    expect(failed).toEqual([1]);
    expect(second.requests).toHaveLength(1);
  });

  it("says so when no worker can be had", () => {
    const desk = new Desk(() => {
      throw new Error("no workers here");
    });
    let failed = false;
    desk.ask<"certainty">(drawing(10), {
      heard: () => {},
      failed: () => {
        failed = true;
      },
    });
    expect(failed).toBe(true);
  });
});
