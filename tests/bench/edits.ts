import type { Browser, Page } from "@playwright/test";
import { mainThreadTasks, taskCategories } from "./main-thread.ts";

/** One kind of edit: `begin` readies the page, `once` makes the i-th edit. */
export interface Edit {
  readonly what: string;
  /** What is opened; the built page where there is none. */
  readonly address?: string;
  readonly begin: (page: Page) => Promise<void>;
  readonly once: (page: Page, i: number) => Promise<void>;
  /** The text that must not be the same after an edit as before, or it was none. */
  readonly shown: (page: Page) => Promise<string | null>;
}

const warmUp = 20;
const edits = 40;
/** From one edit to the next, ms: as fast as a hand types. */
const pause = 150;
/** How long after the last edit what follows it is counted, ms: it is saved by then. */
const rest = 1000;

/** What one edit costs the page's main thread, ms of processor time, with all that follows from it. */
async function costOf(browser: Browser, address: string, edit: Edit): Promise<number> {
  const page = await browser.newPage({ viewport: { width: 1180, height: 820 } });
  await page.goto(edit.address ?? address);
  await edit.begin(page);
  for (let i = 0; i < warmUp; i++) {
    const before = await edit.shown(page);
    await edit.once(page, i);
    await page.waitForTimeout(pause);
    if ((await edit.shown(page)) === before) throw new Error(`${edit.what}: nothing changed.`);
  }
  await page.waitForTimeout(rest);
  await browser.startTracing(page, { categories: taskCategories });
  for (let i = 0; i < edits; i++) {
    await edit.once(page, i);
    await page.waitForTimeout(pause);
  }
  await page.waitForTimeout(rest);
  const tasks = mainThreadTasks(await browser.stopTracing());
  await page.close();
  return tasks.reduce((sum, time) => sum + time, 0) / edits;
}

/** The least that each edit costs in three runs; the kinds take turns, so that a busy minute is not one kind's alone. */
export async function leastCosts(
  browser: Browser,
  address: string,
  kinds: readonly Edit[],
): Promise<readonly number[]> {
  const least = kinds.map(() => Number.POSITIVE_INFINITY);
  for (let run = 0; run < 3; run++) {
    for (const [i, edit] of kinds.entries()) {
      const cost = await costOf(browser, address, edit);
      least[i] = Math.min(least[i] ?? cost, cost);
    }
  }
  return least;
}
