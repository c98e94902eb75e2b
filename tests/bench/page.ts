import { fileURLToPath } from "node:url";
import type { Page } from "@playwright/test";
import { withBuiltPage } from "../browser/built-page.ts";
import { field, handleOf } from "../browser/layout-screen.ts";
import { type Edit, latencies, quantile } from "./edits.ts";
import { report } from "./report.ts";
import { firstLoad } from "./script-size.ts";

const dist = fileURLToPath(new URL("../../dist", import.meta.url));
const slowdown = 4;

/** A digit that moves the shim by two tenths, so that the figure changes with it. */
const typing: Edit = {
  what: "a digit of the saddle typed, to the shim's figure",
  event: "keydown",
  shown: ".shim-figures",
  begin: (page) => field(page, "Saddle exposed").fill("3.49"),
  once: (page, i) => page.keyboard.press(i % 2 === 0 ? "Backspace" : "9"),
};

const drawing: Edit = {
  ...typing,
  what: "the same, to the drawing",
  shown: "figure",
};

const stepping: Edit = {
  ...drawing,
  what: "an arrow key in the saddle, to the drawing",
  once: (page, i) => page.keyboard.press(i % 2 === 0 ? "ArrowUp" : "ArrowDown"),
};

let held = { x: 0, y: 0 };

const dragging: Edit = {
  what: "the break dragged, to the drawing",
  event: "pointermove",
  shown: "figure",
  begin: async (page) => {
    const box = await handleOf(page, "Break").boundingBox();
    if (box === null) throw new Error("The break cannot be taken hold of.");
    held = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await page.mouse.move(held.x, held.y);
    await page.mouse.down();
  },
  once: (page, i) => page.mouse.move(held.x - 20 - (i % 2 === 0 ? 0 : 2), held.y),
};

/** What Chromium itself takes: the same key in a field that only copies its text beside it. */
const bare: Edit = {
  ...drawing,
  what: "a digit typed on a page that only copies it",
  begin: async (page: Page) => {
    await page.setContent("<input><figure></figure>");
    await page.evaluate(() => {
      addEventListener("input", ({ target }) => {
        const figure = document.querySelector("figure");
        if (figure !== null) figure.textContent = (target as HTMLInputElement).value;
      });
    });
    await page.locator("input").fill("490.25");
  },
};

/** Times edits on the built page from event to paint, and weighs what a first visit loads. */
export async function benchPage(): Promise<void> {
  await withBuiltPage(async (browser, address) => {
    const rows: string[][] = [];
    for (const edit of [typing, drawing, stepping, dragging, bare]) {
      const times = await latencies(
        browser,
        edit === bare ? "about:blank" : address,
        edit,
        slowdown,
      );
      const milliseconds = (share: number): string => `${quantile(times, share).toFixed(1)} ms`;
      rows.push([edit.what, milliseconds(0.5), milliseconds(0.95), edit === bare ? "" : "16.7 ms"]);
    }
    report(
      `From event to paint on Layout, Chromium ${browser.version()}, processor slowed ${slowdown} times`,
      [["", "p50", "p95", "goal"], ...rows],
      "From the event's time stamp to the end of the frame that shows the change, waiting for the screen's 60 Hz included.",
    );
  });
  const { script, style } = await firstLoad(dist);
  const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;
  report(
    "What a first visit loads, gzipped",
    [
      ["", "size", "goal"],
      ["script", kilobytes(script), "120 kB"],
      ["style", kilobytes(style)],
    ],
    "Every script that runs before the first drawing; those loaded later are not in.",
  );
}
