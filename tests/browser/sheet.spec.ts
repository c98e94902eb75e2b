import { deflateRawSync } from "node:zlib";
import { expect, type Page } from "@playwright/test";
import jsqr from "jsqr";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { openAddress, readShareText } from "../../src/store/files/share.ts";
import { sharedIn } from "../../src/store/files/shared-address.ts";
import { outlinePoints } from "../support/precise-outline.ts";
import { preset } from "../support/preset.ts";
import { solved } from "../support/solved.ts";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { test } from "./page.ts";
import { lengthsOn, readPdf } from "./pdf-lines.ts";

test.setTimeout(300_000);

// ISO 216 A4, and the American Letter of 8.5 × 11 in.
const papers = [
  ["A4", 210, 297],
  ["Letter", 215.9, 279.4],
] as const;

type PaperSize = (typeof papers)[number];
type Units = "mm" | "in" | "in-fraction";

async function openSheet(page: Page, instrument: Instrument, units: Units = "mm"): Promise<void> {
  const kept = { instrument, lastGood: instrument, texts: {}, setAside: {}, choices: { units } };
  await page.addInitScript((text) => localStorage.setItem("rimwright", text), JSON.stringify(kept));
  await page.goto("/#/sheet");
  await expectCode(page);
}

const expectCode = (page: Page): Promise<void> =>
  expect(page.getByRole("img", { name: "Code that opens this instrument" })).toBeVisible();

/** Everything on the sheet that reaches out of its type area or off its own drawing, as printed. */
const clipped = (page: Page) =>
  page.locator(".sheet").evaluate((sheet) => {
    const within = sheet.getBoundingClientRect();
    const { paddingTop, paddingLeft } = getComputedStyle(sheet);
    const [down, across] = [Number.parseFloat(paddingTop) - 1, Number.parseFloat(paddingLeft) - 1];
    return [...sheet.querySelectorAll("*")]
      .filter((part) => {
        const { left, right, top, bottom } = part.getBoundingClientRect();
        if (
          part instanceof HTMLElement &&
          part.scrollHeight > part.clientHeight + 2 &&
          part.clientHeight > 0
        )
          return getComputedStyle(part).overflow !== "visible";
        return (
          left < within.left + across ||
          right > within.right - across ||
          top < within.top + down ||
          bottom > within.bottom - down
        );
      })
      .map((part) => `${part.tagName} ${part.textContent?.slice(0, 40)}`);
  });

/** Parts of the page that lie on one another. */
const overlapping = (page: Page) =>
  page.locator(".sheet").evaluate((sheet) => {
    const parts = [
      ...sheet.querySelectorAll(
        ":scope > *, .sheet-aside > *, .sheet-plan > svg, .sheet-foot > div > *",
      ),
    ];
    const boxes = parts.map((part) => ({ part, box: part.getBoundingClientRect() }));
    return boxes.flatMap(({ part, box: a }, i) =>
      boxes
        .slice(i + 1)
        .filter(({ part: other }) => !part.contains(other))
        .filter(
          ({ box: b }) =>
            a.left < b.right - 1 &&
            b.left < a.right - 1 &&
            a.top < b.bottom - 1 &&
            b.top < a.bottom - 1,
        )
        .map((other) => `${part.className} / ${other.part.className}`),
    );
  });

/** Words set smaller than 2.75 mm (7.8 point), the least that is read at arm's length; common practice, no source. */
const tooSmall = (page: Page) =>
  page.locator(".sheet").evaluate((sheet) => {
    const mm = 96 / 25.4;
    return [...sheet.querySelectorAll("*")]
      .filter((part) => [...part.childNodes].some((node) => node.nodeType === Node.TEXT_NODE))
      .filter((part) => {
        const scale = part instanceof SVGTextElement ? (part.getScreenCTM()?.a ?? 0) : 1;
        return Number.parseFloat(getComputedStyle(part).fontSize) * scale < 2.75 * mm;
      })
      .map((part) => part.textContent?.slice(0, 40));
  });

async function expectPage(page: Page, [paper, width, height]: PaperSize): Promise<void> {
  await page.getByRole("button", { name: paper, exact: true }).click();
  await page.emulateMedia({ media: "print" });
  expect(await clipped(page), `out of the page on ${paper}`).toEqual([]);
  expect(await overlapping(page), `on one another on ${paper}`).toEqual([]);
  expect(await tooSmall(page), `too small on ${paper}`).toEqual([]);
  const [only, ...more] = readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(more, `more pages on ${paper}`).toEqual([]);
  // Chromium rounds a page to whole points, 0.35 mm.
  expect(Math.abs((only?.width ?? 0) - width)).toBeLessThan(0.4);
  expect(Math.abs((only?.height ?? 0) - height)).toBeLessThan(0.4);
  // The bars, within 0.1 %: 4 in is 101.6 mm by the international inch.
  for (const bar of [100, 101.6])
    expect(lengthsOn(only).filter((length) => Math.abs(length - bar) < bar / 1000)).not.toEqual([]);
  await page.emulateMedia({ media: "screen" });
}

async function expectBothPapers(page: Page): Promise<void> {
  for (const size of papers) await expectPage(page, size);
}

/** What the sheet must say of the instrument, in mm: the shim in both units, the chain, and where the break is marked. */
async function expectSaid(page: Page, instrument: Instrument): Promise<void> {
  const { shim, flatGap, pitch, breakX, stations } = solved(instrument);
  const sheet = page.locator(".sheet");
  await expect(sheet.getByRole("region", { name: "Shim" })).toContainText(shim.toFixed(1));
  // The nearest 64th, by hand: twelve 64ths are 3/16.
  const sixtyFourths = Math.round((shim / 25.4) * 64);
  const divisor = [32, 16, 8, 4, 2, 1].find((n) => sixtyFourths % n === 0) ?? 1;
  const inches = `${sixtyFourths / divisor}/${64 / divisor}`;
  await expect(sheet.getByRole("region", { name: "Shim" })).toContainText(inches);
  await expect(sheet).toContainText(`${pitch.toFixed(2)}°`);
  await expect(sheet).toContainText(`stands ${flatGap.toFixed(2)} mm over the top`);
  const along = stations.find(({ name }) => name === "break")?.arcLength ?? 0;
  const table = sheet.getByRole("table", { name: /^Marks on the rim/ });
  const row = table.getByRole("row", { name: /^Break / });
  const marks = (await row.getByRole("cell").allTextContents()).map(Number);
  const whole = stations.at(-1)?.arcLength ?? 0;
  [breakX, instrument.body.length - breakX, along, whole - along].forEach((mm, i) => {
    expect(Math.abs((marks[i] ?? 0) - mm)).toBeLessThan(0.0501);
  });
  const today = new Date().toLocaleDateString("en", { dateStyle: "long" });
  for (const words of [today, "Wood dust", "As built", "Measure this bar", "window"])
    await expect(sheet).toContainText(words);
}

const jumbo = preset("jumbo");

for (const size of papers)
  test(`every preset on one page of ${size[0]}, true to size, nothing clipped`, async ({
    page,
  }) => {
    await openSheet(page, jumbo);
    for (const instrument of presets) {
      const { name } = instrument;
      await page.getByRole("button", { name: "Start from…" }).click();
      await page.locator("#start-from").getByRole("button", { name }).click();
      await expect(page.getByRole("heading", { name, level: 2, exact: true })).toBeVisible();
      await expectCode(page);
      await expectSaid(page, instrument);
      await expectPage(page, size);
    }
  });

test("the longest names keep the page: wide letters, no spaces, right to left", async ({
  page,
}) => {
  await openSheet(page, jumbo, "in-fraction");
  const names = [
    "W".repeat(200),
    "試作胡桃唐檜二号".repeat(25),
    "גיטרה ראשונה עם גב אגוז, ".repeat(8),
  ];
  for (const name of names) {
    await page.getByLabel("Name of the instrument").fill(name);
    await expect(page.locator(".sheet h2")).toHaveText(name.trim());
    await expectCode(page);
    await expectBothPapers(page);
  }
});

// What whoever finds the sheet in ten years needs to check the shim and to make it again.
const plannedFor: readonly (readonly [Units, readonly string[]])[] = [
  [
    "mm",
    [
      "Dish 8534 mm (28 ft)",
      "Braces 7620 mm (25 ft)",
      "Dish the rim, radius 8534 mm (28 ft)",
      "Body 530 mm long, break 105 mm from the neck end",
      "Scale 645 mm, join at fret 14",
      "Bridge 8.2 mm thick",
      "Target saddle exposed 3.4 mm",
    ],
  ],
  ["in", ["Dish 28 ft", "Dish the rim, radius 28 ft", "Body 20.866 in long", "Scale 25.394 in"]],
  ["in-fraction", ["Dish 28 ft", "Body 20 55/64 in long", "Scale 25 25/64 in"]],
];

for (const [units, said] of plannedFor)
  test(`the printed sheet names all it was planned for, in ${units}`, async ({ page }) => {
    const dome = { ...jumbo.dome, braceRadius: 7620 };
    const notes = `For a spruce top.\n${"Sides a little thick at the waist. ".repeat(40)}`;
    await openSheet(page, { ...jumbo, dome, notes }, units);
    await expectBothPapers(page);
    await page.emulateMedia({ media: "print" });
    const text = readPdf(await page.pdf({ preferCSSPageSize: true }))[0]?.text ?? "";
    for (const words of [...said, "For a spruce top. Sides a little thick"])
      expect(text).toContain(words.replaceAll(" ", ""));
    const [first, second] = units === "mm" ? ["10.3mm", "13/32in"] : ["13/32in", "10.3mm"];
    expect(text).toMatch(new RegExp(`Shimunderthetail${first}${second}`));
  });

const tracing = outlinePoints(jumbo.body, 12).map(([x, y]) => [x, y] as const);
const hard: readonly [string, Units, Instrument][] = [
  ["no dome", "mm", { ...jumbo, dome: { ...jumbo.dome, dishRadius: null, braceRadius: null } }],
  ["an overrun", "in", { ...jumbo, target: { kind: "shim", value: 3 } }],
  ["a traced outline", "in", { ...jumbo, body: { ...jumbo.body, waistAt: 100, tracing } }],
];

for (const [what, units, instrument] of hard)
  test(`one page with nothing clipped, true to size: ${what}`, async ({ page }) => {
    await openSheet(page, instrument, units);
    await expectBothPapers(page);
  });

test("a traced outline's own waist is marked, not the one that was stated", async ({ page }) => {
  await openSheet(page, { ...jumbo, body: { ...jumbo.body, waistAt: 100, tracing } });
  const waist = page
    .getByRole("row", { name: /^Waist/ })
    .getByRole("cell")
    .first();
  expect(Number(await waist.textContent())).toBeCloseTo(jumbo.body.waistAt, 0);
});

// jsQR reads the picture; it knows nothing of how the code was made.
test("the code, read by a camera's decoder, is the address that opens the instrument", async ({
  page,
  context,
}) => {
  const instrument = { ...jumbo, name: "Walnut & spruce, “second try” — ¾" };
  await openSheet(page, instrument);
  const shot = await page.locator(".sheet-code svg").screenshot({ scale: "css" });
  const desk = await context.newPage();
  const { grey, width, height } = await desk.evaluate(async (png) => {
    const picture = new Image();
    picture.src = `data:image/png;base64,${png}`;
    await picture.decode();
    const canvas = new OffscreenCanvas(picture.width * 3, picture.height * 3);
    const pen = canvas.getContext("2d");
    if (pen === null) throw new Error("no canvas");
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const seen = pen.getImageData(0, 0, canvas.width, canvas.height);
    return {
      ...{ width: seen.width, height: seen.height },
      grey: seen.data.filter((_, i) => i % 4 === 0).join(),
    };
  }, shot.toString("base64"));
  const read = jsqr(
    Uint8ClampedArray.from(
      grey.split(",").flatMap((at) => [Number(at), Number(at), Number(at), 255]),
    ),
    width,
    height,
  );
  expect(read?.data).toMatch(/^http:\/\/localhost:\d+\/#\/open\/1[\w-]+$/);
  const opened = await readShareText(sharedIn(new URL(read?.data ?? "").hash) ?? "");
  expect(opened).toEqual({ ok: true, instrument });
});

test("a hostile or damaged code is refused with its reason, and what was open stays", async ({
  page,
}) => {
  await openSheet(page, { ...jumbo, name: "On the bench" });
  const packed = (json: string): string => `1${deflateRawSync(json).toString("base64url")}`;
  const payloads: readonly [string, RegExp][] = [
    ["1***", /damaged: no instrument can be read/],
    ["9abc", /comes from a newer Rimwright, or is damaged/],
    [`1${"A".repeat(20_000)}`, /too long to hold an instrument/],
    [packed(`${" ".repeat(9_000_000)}{}`), /damaged: no instrument can be read/],
    [packed('{"body":{"length":1e308}}'), /Body length|length/],
    [packed('{"name":7,"__proto__":{"name":"taken over"}}'), /name/i],
  ];
  for (const [payload, reason] of payloads) {
    await page.evaluate((hash) => window.location.assign(hash), `#/open/${payload}`);
    await expect(page.getByRole("alert")).toHaveText(reason);
    await expect(page.getByLabel("Name of the instrument")).toHaveValue("On the bench");
    await page.evaluate(() => window.location.assign("#/sheet"));
    await expectCode(page);
  }
  // Told on the screen, and not on paper.
  await expectPage(page, papers[0]);
  const good = await openAddress({ ...jumbo, name: "From a code" }, "http://bench.example/");
  await page.evaluate((hash) => window.location.assign(hash), new URL(good).hash);
  await expect(page.getByLabel("Name of the instrument")).toHaveValue("From a code");
  await page.evaluate(() => window.location.assign("#/sheet"));
  await expectCode(page);
  await expectPage(page, papers[0]);
});

test("axe finds nothing on the sheet at any size, light or dark, and nothing runs off sideways", async ({
  page,
}) => {
  await openSheet(page, jumbo);
  await expectNoViolationAtAnySize(page);
});
