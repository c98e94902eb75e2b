import type { Browser, Page } from "@playwright/test";

/** Milliseconds from the gesture's event to the end of the frame that shows what it changed, rising. */
export type Latencies = readonly number[];

/** One kind of edit: `begin` readies the page, `once` makes the i-th edit. `event` is what starts the clock. */
export interface Edit {
  readonly what: string;
  readonly event: "keydown" | "pointermove";
  /** CSS selector of what must change for the edit to be seen. */
  readonly shown: string;
  readonly begin: (page: Page) => Promise<void>;
  readonly once: (page: Page, i: number) => Promise<void>;
}

const entry = "edit shown";

/** Makes `edit` many times on a fresh page whose processor is slowed `slowdown` times. */
export async function latencies(
  browser: Browser,
  address: string,
  edit: Edit,
  slowdown: number,
): Promise<Latencies> {
  const warmUp = 20;
  const edits = 120;
  const page = await browser.newPage({ viewport: { width: 1180, height: 820 } });
  await page.goto(address);
  await edit.begin(page);
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
  await startClock(page, edit);
  for (let i = 0; i < warmUp + edits; i++) {
    await edit.once(page, i);
    // As fast as a hand types, and unevenly, so that edits do not fall into step with the screen.
    await page.waitForTimeout(120 + ((i * 7) % 17));
  }
  const times = await page.evaluate(
    (name) => performance.getEntriesByName(name).map((measure) => measure.duration),
    entry,
  );
  await page.close();
  if (times.length < 0.9 * (warmUp + edits)) {
    throw new Error(`${edit.what}: only ${times.length} of ${warmUp + edits} edits were seen.`);
  }
  return times.slice(warmUp).sort((a, b) => a - b);
}

/**
 * Times each edit inside the page: from the event's own time stamp, through the first change under
 * `shown`, to a message that is posted in the next animation frame and so is taken up only when
 * that frame's style, layout and paint are done.
 */
async function startClock(page: Page, edit: Edit): Promise<void> {
  await page.evaluate(
    ({ event, shown, name }) => {
      const target = document.querySelector(shown);
      if (target === null) throw new Error(`Nothing on the page is ${shown}.`);
      let start = 0;
      addEventListener(
        event,
        (gesture) => {
          start = gesture.timeStamp;
        },
        { capture: true },
      );
      new MutationObserver(() => {
        if (start === 0) return;
        const began = start;
        start = 0;
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => performance.measure(name, { start: began });
          port2.postMessage(null);
        });
      }).observe(target, { subtree: true, childList: true, attributes: true, characterData: true });
    },
    { event: edit.event, shown: edit.shown, name: entry },
  );
}

export function quantile(rising: Latencies, share: number): number {
  return rising[Math.min(rising.length - 1, Math.floor(share * rising.length))] ?? Number.NaN;
}
