import { fileURLToPath } from "node:url";
import { withBuiltPage } from "../browser/built-page.ts";
import { drawing, field, handleOf, verdict } from "../browser/layout-screen.ts";
import { type Edit, leastCosts } from "./edits.ts";
import { report } from "./report.ts";
import { firstLoad } from "./script-size.ts";

const dist = fileURLToPath(new URL("../../dist", import.meta.url));

/** What a key costs on any page: a field that copies its text beside it, and nothing else. */
const bare: Edit = {
  what: "a digit typed on a page that only copies it",
  address: "about:blank",
  begin: async (page) => {
    await page.setContent("<input><figure></figure>");
    await page.evaluate(() => {
      addEventListener("input", ({ target }) => {
        const figure = document.querySelector("figure");
        if (figure !== null) figure.textContent = (target as HTMLInputElement).value;
      });
    });
    await page.locator("input").fill("490.25");
  },
  once: (page, i) => page.keyboard.press(i % 2 === 0 ? "Backspace" : "9"),
  shown: (page) => page.locator("figure").textContent(),
};

/** A digit that moves the shim by two tenths, so that figure and drawing change with it. */
const typing: Edit = {
  what: "a digit of the saddle typed",
  begin: (page) => field(page, "Saddle exposed").fill("3.49"),
  once: (page, i) => page.keyboard.press(i % 2 === 0 ? "Backspace" : "9"),
  shown: (page) => verdict(page).textContent(),
};

const stepping: Edit = {
  ...typing,
  what: "an arrow key in the saddle",
  once: (page, i) => page.keyboard.press(i % 2 === 0 ? "ArrowUp" : "ArrowDown"),
};

let held = { x: 0, y: 0 };

const dragging: Edit = {
  what: "the break dragged by 2 px",
  begin: async (page) => {
    const box = await handleOf(page, "Break").boundingBox();
    if (box === null) throw new Error("The break cannot be taken hold of.");
    held = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await page.mouse.move(held.x, held.y);
    await page.mouse.down();
  },
  once: (page, i) => page.mouse.move(held.x - 20 - (i % 2 === 0 ? 0 : 2), held.y),
  shown: (page) => drawing(page).innerHTML(),
};

/** The edits, and the most that each may cost over the bare page's. */
const goals: readonly (readonly [Edit, number])[] = [
  [typing, 3.5],
  [stepping, 3.5],
  [dragging, 4.5],
];

/** What an edit costs the built page over what a key costs any, and what a first visit loads. */
export async function benchPage(): Promise<void> {
  await withBuiltPage(async (browser, address) => {
    const [least = Number.NaN, ...costs] = await leastCosts(browser, address, [
      bare,
      ...goals.map(([edit]) => edit),
    ]);
    const rows = goals.map(([{ what }, most], i) => [
      what,
      `× ${((costs[i] ?? Number.NaN) / least).toFixed(2)}`,
      `× ${most}`,
    ]);
    report(
      `What an edit on Layout costs the main thread, Chromium ${browser.version()}`,
      [["", "times the bare page", "goal"], ...rows],
      `Of a trace, with all that follows from the edit, saving too; 40 edits, the least of three runs. ${bare.what}: ${least.toFixed(2)} ms on this machine.`,
    );
  });
  const { script, style } = await firstLoad(dist);
  const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;
  report(
    "What a first visit loads, gzipped",
    [
      ["", "size", "goal"],
      ["script", kilobytes(script), "122 kB"],
      ["style", kilobytes(style), "5 kB"],
    ],
    "Every script that runs before the first drawing; those loaded later are not in.",
  );
}
