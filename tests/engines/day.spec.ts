import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import type { Engine, Look } from "./engine.ts";
import {
  drag,
  firstVisit,
  nonsense,
  startFrom,
  step,
  type as typeIn,
  units,
} from "./layout-steps.ts";
import { openEngine } from "./open-engine.ts";
import { exportAndImport, offline, renameAndUndo, share, twoWindows } from "./shelf-steps.ts";
import { bench, compare, rim, sheet } from "./view-steps.ts";
import { type Workplace, withWorkplace } from "./workplace.ts";

/** The tablet as it lies by day, and as it stands in the evening. */
const looks: readonly Look[] = [
  { width: 1180, height: 820, dark: false },
  { width: 820, height: 1180, dark: true },
];

/** What a builder does in a day, in this order. What a part of it returns is the same in every engine. */
const parts: readonly (readonly [string, (place: Workplace) => Promise<readonly string[]>])[] = [
  ["a first visit", firstVisit],
  ["fractions and feet typed", typeIn],
  ["the stepper", step],
  ["the break dragged and put back", drag],
  ["units", units],
  ["nonsense", nonsense],
  ["Compare", compare],
  ["Rim", rim],
  ["Bench", bench],
  ["Sheet", sheet],
  ["the Shelf: renamed, reloaded, undone", renameAndUndo],
  ["the Shelf: out to a file and in", exportAndImport],
  ["two windows", twoWindows],
  ["Share", share],
  ["Start from", startFrom],
  ["the server gone", offline],
];

for (const look of looks)
  test(`a builder’s day at ${look.width}x${look.height}, ${look.dark ? "dark" : "light"}`, async () => {
    const openNamed = (wanted: Look) => openEngine(test.info().project.name, wanted);
    await withWorkplace(openNamed, look, async (place) => {
      const shown: Record<string, readonly string[]> = {};
      for (const [title, act] of parts) shown[title] = await test.step(title, () => act(place));
      expect(place.engine.faults(), "faults seen while the pages ran").toEqual([]);
      await expectSameAsChromium(shown);
      await expectFaultsSeen(place.engine, place.served.address);
    });
  });

/** Chromium, which goes first, leaves its figures for the others to be held against, however their tablet stands. */
async function expectSameAsChromium(shown: Figures): Promise<void> {
  const { name: engine, outputDir } = test.info().project;
  const path = join(outputDir, "figures.json");
  if (engine === "Chromium") {
    await mkdir(outputDir, { recursive: true });
    await writeFile(path, JSON.stringify(shown, null, 2));
  } else expect(shown).toEqual(JSON.parse(await readFile(path, "utf8")));
}

/** The watch sees what it is there to see. */
async function expectFaultsSeen(engine: Engine, address: string): Promise<void> {
  const tab = await engine.openTab();
  await tab.goto(address);
  await tab.run(() => {
    console.error("told");
    setTimeout(() => {
      throw new Error("thrown");
    });
    setTimeout(() => Promise.reject(new Error("rejected")));
    document.body.insertAdjacentHTML("beforeend", `<p style="color: red">`);
  });
  for (const fault of ["told", "thrown", "rejected", "style-src"])
    await expect.poll(() => engine.faults().join("\n")).toContain(fault);
}

type Figures = Readonly<Record<string, readonly string[]>>;
