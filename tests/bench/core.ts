import { Bench } from "tinybench";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { type Givens, givensOf } from "../../src/profile/givens.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { solve } from "../../src/profile/solve.ts";
import { openWorkshop, type Workshop } from "../support/solid.ts";
import { duration, report } from "./report.ts";
import { shimByHalving, shimBySearch, shimBySolid } from "./searches.ts";

/** One way to the shim, or to all that follows from it. */
interface Way {
  readonly what: string;
  /** Returns the shim, so that ways that disagree are seen. */
  readonly run: () => number;
  /** Runs in one sample, so that a sample is long against the clock's own step. */
  readonly batch: number;
  readonly goal?: string;
  /** Asks for another shim than the rest, so is not compared with it. */
  readonly other?: true;
}

/** Times the core's ways to the shim against plain ones, and a whole profile. */
export async function benchCore(): Promise<void> {
  const shop = await openWorkshop();
  const ways = waysToTheShim(shop);
  const bench = new Bench({ time: 1000, iterations: 3, warmup: false });
  for (const { what, run, batch } of ways) {
    bench.add(what, () => {
      for (let i = 0; i < batch; i++) run();
    });
  }
  bench.runSync();
  const rows = ways.map((way, i) => ({ ...way, ...timesOf(bench, i, way.batch) }));
  const [own] = rows;
  if (own === undefined) return;
  report(
    "The core, on the default instrument asked for a bridge clearance",
    [
      ["", "median", "p99", "times", "shim differs", "goal"],
      ...rows.map(({ what, run, median, p99, goal, other }) => [
        what,
        duration(median),
        duration(p99),
        `× ${Number((median / own.median).toPrecision(3))}`,
        other ? "" : difference(run(), own.run()),
        goal ?? "",
      ]),
    ],
    "Times and differences are against the first row.",
  );
  shop.close();
}

const difference = (shim: number, own: number): string =>
  shim === own ? "none" : `${Math.abs(shim - own).toExponential(0)} mm`;

function timesOf(bench: Bench, i: number, batch: number): { median: number; p99: number } {
  const result = bench.tasks[i]?.result;
  if (result?.state !== "completed") throw new Error(`Not measured: ${bench.tasks[i]?.name}`);
  return { median: result.latency.p50 / batch, p99: result.latency.p99 / batch };
}

function waysToTheShim(shop: Workshop): readonly Way[] {
  const asked = asking(defaultInstrument);
  const givens = givensFor(asked);
  const rounder = asking({
    ...defaultInstrument,
    dome: { ...defaultInstrument.dome, braceRadius: 7620 },
  });
  const stationEvery = givens.outline.totalArc() / 400;
  return [
    { what: "shim", run: () => solved(givensFor(asked)), batch: 100, goal: "2 µs" },
    {
      what: "shim, rounder braces",
      run: () => solved(givensFor(rounder)),
      batch: 100,
      other: true,
    },
    { what: "shim by a root-finder", run: () => shimBySearch(givensFor(asked)), batch: 100 },
    { what: "shim by halving whole profiles", run: () => shimByHalving(asked), batch: 1 },
    { what: "shim by solid cutting", run: () => shimBySolid(shop, givens), batch: 1 },
    { what: "whole profile", run: () => profiled(asked), batch: 1 },
    {
      what: "whole profile, 400 stations",
      run: () => profiled(asked, { stationEvery }),
      batch: 1,
      goal: "150 µs",
    },
  ];
}

const asking = (instrument: Instrument): Instrument => ({
  ...instrument,
  target: { kind: "bridgeClearance", value: 0.5 },
});

function givensFor(instrument: Instrument): Givens {
  const result = givensOf(instrument);
  if (!result.ok)
    throw new Error(`The bench's instrument has no givens: ${result.objection.field}`);
  return result.givens;
}

function solved(givens: Givens): number {
  const result = solve(givens);
  return result.ok ? result.solution.part : Number.NaN;
}

function profiled(instrument: Instrument, options?: { stationEvery: number }): number {
  const result = profileOf(instrument, options);
  return result.ok ? (result.profile.shim ?? Number.NaN) : Number.NaN;
}
