import { readFile } from "node:fs/promises";
import { expect, type Page } from "@playwright/test";
import { offPolyline, type Place } from "../../src/geometry/polyline.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { outlinePoints } from "../support/precise-outline.ts";
import { preset } from "../support/preset.ts";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { test } from "./page.ts";
import { lengthsOn, type PdfPage, readPdf } from "./pdf-lines.ts";

test.setTimeout(300_000);

async function openTemplate(page: Page, instrument: Instrument, name: string): Promise<void> {
  const work = { instrument, lastGood: instrument, texts: {}, setAside: {} };
  const kept = JSON.stringify({ ...work, choices: { units: "mm" } });
  await page.addInitScript((text) => localStorage.setItem("rimwright", text), kept);
  await page.goto("/#/sheet");
  await page.getByLabel("Page or template").selectOption(name);
  await expect(page.getByText(/full size\.$/)).toBeVisible();
}

async function printed(page: Page, paper: string): Promise<readonly PdfPage[]> {
  await page.getByRole("button", { name: paper, exact: true }).click();
  const pages = await page.locator(".tile").count();
  const read = readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(read).toHaveLength(pages);
  for (const one of read)
    expect(lengthsOn(one).filter((length) => Math.abs(length - 100) < 0.1)).not.toEqual([]);
  return read;
}

/** Centres of a page's crosses, by their level arms of 14 mm, from the left. */
const crossesOn = ({ lines }: PdfPage): readonly Place[] =>
  lines
    .flatMap((line): Place[] => {
      const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = line;
      const level = line.length === 2 && Math.abs(ay - by) < 0.01;
      return level && Math.abs(Math.abs(bx - ax) - 14) < 0.02 ? [[(ax + bx) / 2, ay]] : [];
    })
    .sort((a, b) => a[0] - b[0]);

/** The edge to be cut as far as each page shows it, the pages laid cross on cross from left to right. */
function putTogether(pages: readonly PdfPage[]): readonly Place[] {
  let [dx, dy] = [0, 0];
  let before: readonly Place[] | null = null;
  return pages.flatMap((page) => {
    const crosses = crossesOn(page);
    expect(crosses).toHaveLength(4);
    const byHeight = (a: Place, b: Place) => a[1] - b[1];
    const here = crosses.slice(0, 2).sort(byHeight);
    if (before !== null) {
      const [low, high] = before.slice(2).sort(byHeight);
      const [ownLow, ownHigh] = here;
      if (low === undefined || high === undefined || ownLow === undefined || ownHigh === undefined)
        throw new Error("no crosses");
      dx += (low[0] + high[0] - ownLow[0] - ownHigh[0]) / 2;
      dy += (low[1] + high[1] - ownLow[1] - ownHigh[1]) / 2;
      // Both crosses fit at once: the pages neither turn nor stretch.
      expect(Math.abs(high[1] - low[1] - (ownHigh[1] - ownLow[1]))).toBeLessThan(0.05);
    }
    // Laid out in the page's own frame, so `before` is too; dx and dy grow page by page.
    before = crosses;
    const half = 8;
    const [xs, ys] = [crosses.map(([x]) => x), crosses.map(([, y]) => y)];
    const [left, right] = [Math.min(...xs) - half, Math.max(...xs) + half];
    const [foot, top] = [Math.min(...ys) - half, Math.max(...ys) + half];
    return sampled(longest(page))
      .filter(([x, y]) => x >= left && x <= right && y >= foot && y <= top)
      .map(([x, y]): Place => [x + dx, y + dy]);
  });
}

const longest = ({ lines }: PdfPage): readonly Place[] =>
  lines.reduce((most, line) => (line.length > most.length ? line : most), [] as readonly Place[]);

/** Places every tenth of a millimetre along the lines. */
const sampled = (places: readonly Place[]): Place[] =>
  places.slice(1).flatMap(([x, y], i) => {
    const [px, py] = places[i] ?? [x, y];
    const steps = Math.max(1, Math.ceil(Math.hypot(x - px, y - py) / 0.1));
    return Array.from({ length: steps }, (_, step): Place => {
      const share = (step + 1) / steps;
      return [px + (x - px) * share, py + (y - py) * share];
    });
  });

// The outline's own pieces in 50 digits, by the tests' own arithmetic.
for (const id of ["orchestra-size", "jumbo"])
  test(`pages laid cross on cross are the half outline of ${id} within 0.1 mm, on both papers`, async ({
    page,
  }) => {
    const instrument = preset(id);
    await openTemplate(page, instrument, "Half outline");
    for (const paper of ["A4", "Letter"]) {
      const pages = await printed(page, paper);
      expect(pages.length).toBeGreaterThan(1);
      const laid = putTogether(pages);
      const [left, foot] = [Math.min(...laid.map(([x]) => x)), Math.min(...laid.map(([, y]) => y))];
      const placed = laid.map(([x, y]): Place => [x - left, y - foot]);
      const edge = outlinePoints(instrument.body, 150).map(([x, y]): Place => [x, y]);
      const whole = [...edge, [instrument.body.length, 0] as const];
      const outside = placed.filter(([, y]) => y > 0.1);
      expect(Math.max(...outside.map((place) => offPolyline(place, whole)))).toBeLessThan(0.1);
      const missing = edge.map(([x, y]) =>
        Math.min(...placed.map(([u, v]) => Math.hypot(u - x, v - y))),
      );
      expect(Math.max(...missing)).toBeLessThan(0.15);
    }
  });

/** Words and drawings of a page that reach out of its type area. */
const clipped = (page: Page) =>
  page.locator(".tile").evaluateAll((tiles) =>
    tiles.flatMap((tile) => {
      const within = tile.getBoundingClientRect();
      return [...tile.querySelectorAll("svg, p, figcaption, b, .tile-name")]
        .filter((part) => {
          const { left, right, bottom } = part.getBoundingClientRect();
          return (
            left < within.left + 30 || right > within.right - 30 || bottom > within.bottom - 20
          );
        })
        .map((part) => part.textContent);
    }),
  );

test("every template prints on both papers, each page whole and with its bar, and says how many there are", async ({
  page,
}) => {
  await openTemplate(page, { ...preset("orchestra-size"), name: "W".repeat(200) }, "Side pattern");
  const names = [
    ...["Half outline", "Side pattern", "Section profile"],
    ...["Top braces", "Back braces", "Shim gauge", "Saddle"],
  ];
  for (const name of names)
    for (const paper of ["A4", "Letter"]) {
      await page.getByLabel("Page or template").selectOption(name);
      await expect(page.getByText(/full size\.$/)).toBeVisible();
      const pages = await printed(page, paper);
      const said = pages.length === 1 ? "One page" : `${pages.length} pages`;
      await expect(page.getByText(`${said}, full size.`)).toBeVisible();
      expect(crossesOn(pages[0] ?? { width: 0, height: 0, lines: [], text: "" })).toHaveLength(
        pages.length === 1 ? 0 : 4,
      );
      expect(await clipped(page), name).toEqual([]);
    }
});

test("several braces take their own lengths and radii, stand in the Rim's list too, and both files are saved", async ({
  page,
}) => {
  await openTemplate(page, preset("orchestra-size"), "Top braces");
  await page.getByRole("textbox", { name: "Top brace, length" }).fill("24 in");
  await page.getByRole("textbox", { name: "Top brace, radius" }).fill("28 ft");
  // Over 24 in a circle of 28 ft rises 5.445 mm: r − √(r² − c²/4) by hand.
  await expect(page.getByText(/rise 5\.4[45] mm/).first()).toBeVisible();
  await page.getByRole("button", { name: "Add a top brace" }).click();
  await page.getByRole("textbox", { name: "Top brace 2, length" }).fill("12 in");
  await page.getByRole("textbox", { name: "Top brace 2, radius" }).fill("25 ft");
  // Over 12 in a circle of 25 ft rises 1.524 mm, by the same.
  await expect(page.getByText(/rise 1\.52 mm/).first()).toBeVisible();
  const save = async (kind: string): Promise<string> => {
    const saving = page.waitForEvent("download");
    await page.getByRole("button", { name: `Save ${kind}` }).click();
    const download = await saving;
    expect(download.suggestedFilename()).toBe(`orchestra-size-top-braces.${kind.toLowerCase()}`);
    return readFile(await download.path(), "utf8");
  };
  expect(await save("SVG")).toMatch(/width="[\d.]+mm"[\s\S]*(data-role="brace arc"[\s\S]*){2}/);
  expect(await save("DXF")).toMatch(/AC1009[\s\S]*Top brace 2/);
  await page.getByRole("link", { name: "Rim" }).click();
  await expect(page.getByText(/Top brace 2, 304\.8 mm long, rises 1\.52 mm/)).toBeVisible();
  await page.getByRole("button", { name: "Remove top brace 2" }).click();
  await expect(page.getByText(/Top brace 2/)).toHaveCount(0);
});

test("axe finds nothing on a template at any size, light or dark, and nothing runs off sideways", async ({
  page,
}) => {
  await openTemplate(page, preset("jumbo"), "Top braces");
  await page.getByRole("button", { name: "Add a top brace" }).click();
  await expectNoViolationAtAnySize(page);
});
