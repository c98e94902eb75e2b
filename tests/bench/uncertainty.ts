import type { Page } from "@playwright/test";
import jStat from "jstat";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import {
  inputsOf,
  modelOf,
  perturbedOutcomesOf,
} from "../../src/profile/uncertainty/perturbed-model.ts";
import { withPartFixed } from "../../src/profile/uncertainty/tolerances.ts";
import { UncertaintyRun } from "../../src/profile/uncertainty/uncertainty.ts";
import { withBuiltPage } from "../browser/built-page.ts";
import { mainThreadTasks, taskCategories } from "./main-thread.ts";
import { duration, report } from "./report.ts";

const asked = { instrument: defaultInstrument, shape: "normal", seed: 1 } as const;

/** How fast the draws are made, against a general statistics library in the same run, and what the page feels of them. */
export async function benchUncertainty(): Promise<void> {
  // Both ways once, so that neither is timed while it is still being compiled.
  own(20_000);
  byLibrary(20_000);
  const library = byLibrary(100_000);
  const counts = [10_000, 100_000, 1_000_000, 5_000_000];
  const rows = counts.map((draws) => ({ what: `${draws} draws`, draws, time: own(draws) }));
  const like = rows.find(({ draws }) => draws === 100_000)?.time ?? Number.NaN;
  report(
    "How sure: fourteen measures drawn at once, six outcomes judged and counted",
    [
      ["", "time", "draws a second"],
      ...rows.map(({ what, draws, time }) => [what, duration(time), perSecond(draws, time)]),
      ["100000 draws, jstat", duration(library), perSecond(100_000, library)],
    ],
    `The library draws its own normals for the same model, keeps them, and gives mean, deviation and quantiles: × ${(library / like).toPrecision(3)} the time of 100000 draws here.`,
  );
  const longest = await withBuiltPage(async (browser, address) => {
    const page = await browser.newPage({ viewport: { width: 1180, height: 820 } });
    await page.goto(`${address}#/compare`);
    await millionWhileTyping(page, "100 000");
    await browser.startTracing(page, { categories: taskCategories });
    await millionWhileTyping(page, "1 000 000");
    return mainThreadTasks(await browser.stopTracing()).reduce((a, b) => Math.max(a, b), 0);
  });
  report(
    "The page while a million draws run and a name is typed",
    [
      ["", "", "goal"],
      ["longest task of the main thread", duration(longest), "50 ms"],
    ],
    "Its own processor time, as Chromium traces it.",
  );
}

const perSecond = (draws: number, milliseconds: number): string =>
  String(Math.round(draws / milliseconds) * 1000);

function own(draws: number): number {
  const start = performance.now();
  const run = UncertaintyRun.of(asked);
  if (run === null) throw new Error("The bench's instrument has no plan.");
  run.run(draws);
  run.result();
  return performance.now() - start;
}

/** The same model, its inputs drawn and its outcomes summed up by the library. */
function byLibrary(draws: number): number {
  const built = withPartFixed(defaultInstrument);
  if (built === null) throw new Error("The bench's instrument has no plan.");
  const start = performance.now();
  const inputs = inputsOf(built, "normal");
  const model = modelOf(
    built,
    inputs.map(({ path }) => path),
    true,
  );
  const kinds = perturbedOutcomesOf(built);
  const values = new Float64Array(inputs.length);
  const outcomes = new Float64Array(kinds.length);
  const kept = kinds.map(() => new Array<number>(draws));
  for (let draw = 0; draw < draws; draw++) {
    inputs.forEach(({ value, u }, i) => {
      values[i] = jStat.normal.sample(value, u);
    });
    model(values, outcomes);
    kept.forEach((all, i) => {
      all[draw] = outcomes[i] ?? Number.NaN;
    });
  }
  for (const all of kept) {
    jStat.mean(all);
    jStat.stdev(all, true);
    jStat.quantiles(all, [0.025, 0.975]);
  }
  return performance.now() - start;
}

async function millionWhileTyping(page: Page, draws: string): Promise<void> {
  const sure = page.getByRole("region", { name: "How sure" });
  await sure.getByLabel("Draws", { exact: true }).selectOption({ label: draws });
  await page.getByLabel("Name of the instrument").pressSequentially("as I type ", { delay: 40 });
  await sure
    .getByRole("status")
    .filter({ hasText: `${draws} drawn.` })
    .waitFor({ timeout: 120_000 });
}
