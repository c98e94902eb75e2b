import { spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, expect, type Page, test } from "@playwright/test";
import { findChromium, quietFlags } from "./find-chromium.ts";
import { field } from "./layout-screen.ts";
import { nameField, pick, row, savingWord, shelfFile, trouble } from "./shelf-screen.ts";

/** From an edit's appearing to when the end of its page must not lose it, ms. */
const safeAfter = 500;
/** To when the end of the whole browser must not: that needs the write itself, which takes its time where others want the disk and the processors too. */
const writtenAfter = 1000;

interface Shown {
  readonly length: string;
  readonly name: string;
}

/** Edits made one after the other, and what the page had shown of them when it was last heard of. */
interface Burst {
  readonly round: number;
  /** In order; the first is before any edit. */
  readonly states: readonly Shown[];
  /** When each had been painted, ms on the page's clock. */
  readonly times: readonly number[];
}

// A kill takes its time where others want the processors too.
test.describe.configure({ timeout: 1_200_000 });

/** How many times a page is killed: more with KILLS=200. */
const points = Number(process.env["KILLS"] ?? 40);
/** A browser's own end takes longer, and is tried a quarter as often. */
const ends = points / 4;
for (const half of [0, 1]) {
  test(`a page killed at ${points / 2} points of a burst of edits comes back on a state it showed, ${half + 1} of 2`, async ({
    browser,
    baseURL,
  }) => {
    const context = await browser.newContext({
      serviceWorkers: "block",
      ...(baseURL === undefined ? {} : { baseURL }),
    });
    const kills = [crash, leave, close, leave];
    let lost = 0;
    let page = await opened(context);
    for (let i = half; i < points; i += 2) {
      const burst = await edited(page, 60 + (i % 40) * 25, i);
      await (kills[Math.floor(i / 2) % kills.length] ?? crash)(page);
      page = await opened(context);
      lost += await lostOf(page, burst, safeAfter, `killed at point ${i}`);
    }
    await context.close();
    console.log(`page killed: ${points / 2} points tried, ${lost} edits lost`);
    expect(lost).toBe(0);
  });
}

test(`a browser killed outright at ${ends} points comes back on a state it showed`, async ({
  baseURL,
}) => {
  const folder = await mkdtemp(join(tmpdir(), "rimwright-killed-"));
  let lost = 0;
  let burst: Burst | null = null;
  for (let i = 0; i <= ends; i += 1) {
    const { context, kill } = await startBrowser(folder);
    const page = await opened(context, baseURL);
    if (burst !== null)
      lost += await lostOf(page, burst, writtenAfter, `browser killed at point ${i - 1}`);
    burst = await edited(page, 100 + (i % 10) * 250, i);
    await kill();
  }
  await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  console.log(`browser killed: ${ends} points tried, ${lost} edits lost`);
  expect(lost).toBe(0);
});

test("a browser killed within five seconds of a change of instruments comes back on the one it showed, and tells of no other tab", async ({
  baseURL,
}) => {
  const folder = await mkdtemp(join(tmpdir(), "rimwright-switched-"));
  const names = ["First", "Second"] as const;
  const waits = [400, 900, 1_900, 2_900, 3_900, 4_700];
  let showing: (typeof names)[number] | null = null;
  let back = 0;
  for (const wait of [1_000, ...waits]) {
    const { context, kill } = await startBrowser(folder);
    const page = await opened(context, baseURL);
    if (showing === null) {
      await pick(await shelfOf(page, baseURL), shelfFile(...names.map((name) => ({ name }))));
      await expect(row(page, "Second")).toBeVisible();
      await row(page, "Second").getByRole("button", { name: "Open" }).click();
      showing = "Second";
      await page.goto(`${baseURL}#/layout`);
    } else {
      await expect(nameField(page)).toHaveValue(showing);
      expect(await trouble(page).allTextContents()).toEqual([]);
      back += 1;
    }
    await field(page, "Body length").fill(`${480 + back}`);
    await expect(savingWord(page)).toHaveText("saved");
    showing = showing === "First" ? "Second" : "First";
    await row(await shelfOf(page, baseURL), showing)
      .getByRole("button", { name: "Open" })
      .click();
    await expect(nameField(page)).toHaveValue(showing);
    await page.waitForTimeout(wait);
    await kill();
  }
  await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  console.log(`browser killed after a change of instruments: ${back} of ${waits.length} came back`);
  expect(back).toBe(waits.length);
});

async function shelfOf(page: Page, baseURL = ""): Promise<Page> {
  await page.goto(`${baseURL}#/shelf`);
  return page;
}

async function opened(context: BrowserContext, baseURL = ""): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${baseURL}#/layout`);
  await expect(page.locator(".saving, .save")).toBeVisible();
  return page;
}

/** Edits every 40 ms, without a rest, and goes on while the page lives; returns once it has done so for `lasting` ms. */
async function edited(page: Page, lasting: number, round: number): Promise<Burst> {
  const states: Shown[] = [];
  const times: number[] = [];
  let enough = (): void => {};
  const lasted = new Promise<void>((resolve) => {
    enough = resolve;
  });
  await page.exposeFunction("shownOnScreen", (shown: Shown, time: number) => {
    states.push(shown);
    times.push(time);
    if (time - (times[0] ?? 0) >= lasting) enough();
  });
  await page.evaluate(editOnAndOn, round);
  await lasted;
  return { round, states, times };
}

/** Runs in the page: as quick a hand as there is, and a watch on what it sees. */
function editOnAndOn(round: number): void {
  const inputs = [...document.querySelectorAll("input")];
  const name = inputs.find((input) => input.ariaLabel === "Name of the instrument");
  const length = inputs.find(({ labels }) => labels?.[0]?.textContent.trim() === "Body length");
  const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
  if (name === undefined || length === undefined) throw new Error("Nothing to edit.");
  const key = round % 4 < 2 ? "ArrowUp" : "ArrowDown";
  const tell = (count: number): void => {
    const told = { length: length.value, name: name.value };
    // Painted with the next frame.
    requestAnimationFrame(() => {
      const { shownOnScreen } = window as unknown as {
        shownOnScreen: (shown: Shown, time: number) => void;
      };
      shownOnScreen(told, performance.now());
      setTimeout(() => edit(count + 1), 40);
    });
  };
  const edit = (count: number): void => {
    if (count % 2 === 1) length.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true }));
    else {
      put?.call(name, `round ${round}, edit ${count}`);
      name.dispatchEvent(new Event("input", { bubbles: true }));
    }
    setTimeout(() => tell(count));
  };
  tell(0);
}

async function shownOn(page: Page): Promise<Shown> {
  return {
    length: await field(page, "Body length").inputValue(),
    name: await nameField(page).inputValue(),
  };
}

/**
 * How many edits are gone that had been on screen long enough. Fails on what is no state between two
 * edits: the page may have made one more than it could tell of, but none by half.
 */
async function lostOf(page: Page, burst: Burst, after: number, when: string): Promise<number> {
  const now = await shownOn(page);
  const at = editsIn(now, burst);
  expect(now, `${when}, after ${at} edits`).toEqual(stateAfter(at, burst));
  expect.soft(await trouble(page).allTextContents(), when).toEqual([]);
  const soon = Math.max(0, seenFor(safeAfter, burst) - at);
  if (soon > 0) console.log(`${when}: ${soon} edits lost that had been seen for half a second`);
  return Math.max(0, seenFor(after, burst) - at);
}

/** How many edits had been on screen so long, ms, when the page was last heard of. */
function seenFor(long: number, { times }: Burst): number {
  const last = times.at(-1) ?? 0;
  return times.filter((time) => time <= last - long).length - 1;
}

function editsIn({ length, name }: Shown, burst: Burst): number {
  const named = name.startsWith(`round ${burst.round},`) ? Number(name.split(" ").at(-1)) : 0;
  return stateAfter(named, burst).length === length ? named : named + 1;
}

/** The burst's state after so many edits: every other one steps the length, the rest change the name. */
function stateAfter(edits: number, { round, states }: Burst): Shown {
  const [first] = states;
  if (first === undefined) throw new Error("The page showed nothing.");
  const steps = Math.ceil(edits / 2) * (round % 4 < 2 ? 1 : -1);
  return {
    length: `${Number(first.length) + steps}`,
    name: edits < 2 ? first.name : `round ${round}, edit ${2 * Math.floor(edits / 2)}`,
  };
}

/** Ends the page's process, as when the system takes it. No handler of the page runs. */
async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const gone = page.waitForEvent("crash");
  void session.send("Page.crash").catch(() => {});
  await gone;
  await page.close();
}

async function leave(page: Page): Promise<void> {
  await page.goto("about:blank");
  await page.close();
}

const close = (page: Page): Promise<void> => page.close();

/** A browser of our own on a folder of its own, to be ended as by a dead battery. */
async function startBrowser(
  folder: string,
): Promise<{ context: BrowserContext; kill: () => Promise<void> }> {
  const flags = [
    "--headless",
    "--no-sandbox",
    "--remote-debugging-port=0",
    `--user-data-dir=${folder}`,
  ];
  const running = spawn(findChromium(), [...quietFlags, ...flags, "about:blank"], {
    stdio: ["ignore", "ignore", "pipe"],
    detached: true,
  });
  const gone = new Promise((resolve) => running.once("exit", resolve));
  const address = await new Promise<string>((resolve, reject) => {
    let told = "";
    running.stderr.on("data", (data) => {
      told += data;
      const found = /DevTools listening on (ws:\S+)/.exec(told)?.[1];
      if (found !== undefined) resolve(found);
    });
    running.once("exit", () => reject(new Error(`The browser would not start: ${told}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const [context] = browser.contexts();
  if (context === undefined || running.pid === undefined) throw new Error("No browser to drive.");
  const { pid } = running;
  const kill = async (): Promise<void> => {
    process.kill(-pid, "SIGKILL");
    await gone;
  };
  return { context, kill };
}
