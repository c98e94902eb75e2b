import type { Page } from "@playwright/test";
import { median } from "d3-array";
import { withBuiltPage } from "../browser/built-page.ts";
import { field } from "../browser/layout-screen.ts";
import { instruments, saveAs } from "../browser/shelf-screen.ts";
import { report } from "./report.ts";

const sizes = [10, 100, 1000, 5000, 10_000] as const;
const times = 5;

/** Times the shelf with few instruments and with thousands on it, in Chromium at its own speed. */
export async function benchShelf(): Promise<void> {
  await withBuiltPage(async (browser, address) => {
    const rows: string[][] = [];
    for (const size of sizes) {
      const context = await browser.newContext({ serviceWorkers: "block" });
      const page = await context.newPage();
      await page.goto(address);
      await saveAs(page, "Measured");
      await fill(page, size - 1);
      const opening = await repeated(() => opened(page, address));
      const finding = await repeated((i) => found(page, `no. ${i}`));
      await page.goto(`${address}#/layout`);
      const saving = await repeated(() => saved(page));
      rows.push([`${size} instruments`, ...[opening, finding, saving].map(milliseconds)]);
      await context.close();
    }
    report(
      `The shelf, Chromium ${browser.version()}`,
      [["", "opened", "one found by name", "edit to saved"], ...rows, goals],
      `Medians of ${times}: from the first click on Shelf, two seconds after the page was opened, to its first rows on screen; from a search to its rows; from an edit to the word “saved”, the pause of 200 ms before each save included.`,
    );
  });
}

const goals = ["goal", "200 ms (5 000)", "", "500 ms"];

const milliseconds = (values: readonly number[]): string =>
  `${(median(values) ?? Number.NaN).toFixed(0)} ms`;

async function repeated(once: (i: number) => Promise<number>): Promise<number[]> {
  // The first loads what a later one has at hand.
  await once(0);
  const taken: number[] = [];
  for (let i = 1; i <= times; i += 1) taken.push(await once(i));
  return taken.sort((a, b) => a - b);
}

/** Puts copies of the one on the shelf beside it, past the page's own code. */
const fill = (page: Page, count: number): Promise<void> =>
  page.evaluate(
    (copies) =>
      new Promise<void>((filled, failed) => {
        const asked = indexedDB.open("rimwright");
        asked.onsuccess = () => {
          const act = asked.result.transaction(["entries", "cards"], "readwrite");
          act.onerror = () => failed(act.error);
          act.oncomplete = () => {
            asked.result.close();
            filled();
          };
          for (const name of ["entries", "cards"]) {
            const store = act.objectStore(name);
            const all = store.getAll();
            all.onsuccess = () => {
              const [one] = all.result as [{ work: { instrument: object } }];
              for (let i = 0; i < copies; i += 1)
                store.put({ ...one, id: `copy-${i}`, name: `Copy no. ${i}`, savedAt: i });
            };
          }
        };
      }),
    count,
  );

/** From the first click on the Shelf's link, some time after the page was opened, to its rows on screen, ms. */
async function opened(page: Page, address: string): Promise<number> {
  await page.goto("about:blank");
  await page.goto(address);
  await field(page, "Body length").waitFor();
  await page.waitForTimeout(2000);
  return onScreen(page, () => {
    document.querySelector<HTMLAnchorElement>('a[href="#/shelf"]')?.click();
    return () => document.querySelector(".shelf-row") !== null;
  });
}

/** From a name typed in the search to its rows on screen, ms. */
async function found(page: Page, name: string): Promise<number> {
  const find = instruments(page).getByLabel("Find");
  await find.fill("");
  await find.evaluate((input, text) => {
    input.dataset["wanted"] = text;
  }, name);
  return onScreen(page, () => {
    const input = document.querySelector<HTMLInputElement>(".shelf-tools input");
    const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
    const before = document.querySelector(".shelf-told")?.textContent;
    put?.call(input, input?.dataset["wanted"]);
    input?.dispatchEvent(new Event("input", { bubbles: true }));
    return () => document.querySelector(".shelf-told")?.textContent !== before;
  });
}

/** From an edit to the word that it is saved, ms. */
const saved = (page: Page): Promise<number> =>
  onScreen(page, () => {
    const length = [...document.querySelectorAll("input")].find(
      ({ labels }) => labels?.[0]?.textContent.trim() === "Body length",
    );
    length?.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowUp", bubbles: true }));
    let begun = false;
    return () => {
      const word = document.querySelector(".saving")?.textContent;
      begun ||= word === "saving…";
      return begun && word === "saved";
    };
  });

/** From `act` to the end of the frame in which what it returns first holds, ms. */
const onScreen = (page: Page, act: () => () => boolean): Promise<number> =>
  page.evaluate(
    `new Promise((resolve) => {
      const start = performance.now();
      const isShown = (${act})();
      const look = () => {
        if (!isShown()) return requestAnimationFrame(look);
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => resolve(performance.now() - start);
        port2.postMessage(null);
      };
      requestAnimationFrame(look);
    })`,
  );
