import { writeFile } from "node:fs/promises";
import { test } from "@playwright/test";
import { allOf, field, part, region, see } from "./builder.ts";
import type { Engine, Look, Tab } from "./engine.ts";
import { type ServedPage, servePage } from "./served-page.ts";

/** What a part of the day has to work with. */
export interface Workplace {
  readonly engine: Engine;
  readonly tab: Tab;
  readonly served: ServedPage;
  readonly look: Look;
}

/** Serves the page, opens an engine on it and works there. A failure leaves a picture of the window. */
export async function withWorkplace(
  openEngine: (look: Look) => Promise<Engine>,
  look: Look,
  work: (place: Workplace) => Promise<void>,
): Promise<void> {
  const served = await servePage();
  try {
    const engine = await openEngine(look);
    try {
      const tab = await engine.openTab();
      await work({ engine, tab, served, look }).catch(async (fault) => {
        await writeFile(test.info().outputPath("window.png"), await tab.picture());
        throw fault;
      });
    } finally {
      await engine.close();
    }
  } finally {
    await served.stop();
  }
}

export const verdict = region("Verdict");
export const nameField = field("Name of the instrument");
export const bodyLength = field("Body length");

/** The shim and the chain that follows from it, as the verdict shows them. */
export async function figuresOf(tab: Tab): Promise<string[]> {
  await see(tab, part("region", "Shim", verdict));
  const [shim = [], links = []] = [
    await allOf(tab, part("region", "Shim", verdict)),
    await allOf(tab, part("listitem", "", verdict)),
  ];
  return [...shim, ...links].map(({ text }) => text);
}

/** Every table of the open view, as text. */
export const tablesOf = async (tab: Tab): Promise<string[]> =>
  (await allOf(tab, part("table", "", part("main", "")))).map(({ text }) => text);
