import type { Instrument, Range } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { readyForSticks } from "../../src/profile/sticks/on-stick.ts";
import { fewestSticks, mostServed } from "../../src/profile/sticks/stick-set.ts";
import { stickWantsOf } from "../../src/profile/sticks/wanted-stick.ts";
import { randomInstruments } from "../support/random-instrument.ts";
import { duration, report } from "./report.ts";
import { timed } from "./timed.ts";

/** Rows in sight while a stick is dragged. */
const inSight = 25;

/** What a dragged stick costs the page, and a shop of thousands the worker. */
export function benchSticks(): void {
  const shop: readonly Instrument[] = [...presets, ...randomInstruments(4993, 16)];
  const rows = shop.slice(0, inSight).map((one) => readyForSticks(one, null));
  let thickness = 7.5;
  const drag = timed(() => {
    thickness += 0.01;
    for (const ready of rows) ready(thickness);
  });
  const all = timed(() => {
    for (const one of shop) readyForSticks(one, null)(8);
  });
  const owned = [7.5, 8.5].map((one) => ({ thickness: one, width: null }));
  const start = performance.now();
  const wants = shop.map((one) => stickWantsOf(one, owned));
  const wanting = performance.now() - start;
  const ranges = wants.flatMap(({ range }): readonly Range[] =>
    typeof range === "string" ? [] : [[range.low.shim, range.high.shim]],
  );
  // Drawn by lot, few of them are served by any stick; a shop's own are.
  const many = Array.from({ length: 5000 }, (_, i): Range => {
    const [low, high] = ranges[i % ranges.length] ?? [6, 9];
    const off = ((i * 7919) % 1000) / 1000;
    return [low + off, high + off];
  });
  report(
    "Sticks, 5 000 instruments",
    [
      ["", "time"],
      [`a stick moved, ${inSight} rows in sight`, duration(drag)],
      ["one stick on all, in the worker", duration(all)],
      ["what each wants, two sticks owned, in the worker", duration(wanting)],
      ["the fewest sticks for 5 000 that are served", duration(timed(() => fewestSticks(many)))],
      ["the three that serve the most of them", duration(timed(() => mostServed(many, 3)))],
    ],
    "Goals: a frame (16.7 ms) for what is in sight, 2 s for the fewest.",
  );
}
