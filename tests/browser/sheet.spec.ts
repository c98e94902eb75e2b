import { expect, type Page } from "@playwright/test";
import jsqr from "jsqr";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { readShareText } from "../../src/store/share.ts";
import { sharedIn } from "../../src/store/shared-address.ts";
import { test } from "./page.ts";
import { lengthsOn, readPdf } from "./pdf-lines.ts";

test.setTimeout(300_000);

// ISO 216 A4, and the American Letter of 8.5 × 11 in.
const papers = [
  ["A4", 210, 297],
  ["Letter", 215.9, 279.4],
] as const;

type Units = "mm" | "in" | "in-fraction";

async function openSheet(page: Page, instrument: Instrument, units: Units = "mm"): Promise<void> {
  const kept = { instrument, lastGood: instrument, texts: {}, setAside: {}, choices: { units } };
  await page.addInitScript((text) => localStorage.setItem("rimwright", text), JSON.stringify(kept));
  await page.goto("/#/sheet");
  await expect(page.getByRole("img", { name: "Code that opens this instrument" })).toBeVisible();
}

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

async function expectPage(page: Page): Promise<void> {
  for (const [paper, width, height] of papers) {
    await page.getByRole("button", { name: paper }).click();
    await page.emulateMedia({ media: "print" });
    expect(await clipped(page), `out of the page on ${paper}`).toEqual([]);
    expect(await overlapping(page), `on one another on ${paper}`).toEqual([]);
    const [only, ...more] = readPdf(await page.pdf({ preferCSSPageSize: true }));
    expect(more, `more pages on ${paper}`).toEqual([]);
    // Chromium rounds a page to whole points, 0.35 mm.
    expect(Math.abs((only?.width ?? 0) - width)).toBeLessThan(0.4);
    expect(Math.abs((only?.height ?? 0) - height)).toBeLessThan(0.4);
    // The bars, within 0.1 %: 4 in is 101.6 mm by the international inch.
    for (const bar of [100, 101.6])
      expect(lengthsOn(only).filter((length) => Math.abs(length - bar) < bar / 1000)).not.toEqual(
        [],
      );
    await page.emulateMedia({ media: "screen" });
  }
}

for (const preset of presets) {
  test(`one page with nothing clipped, true to size: ${preset.name}`, async ({ page }) => {
    await openSheet(page, preset);
    await expectPage(page);
  });
}

const jumbo = presets.find(({ id }) => id === "jumbo") ?? presets[0];
if (jumbo === undefined) throw new Error("no preset");

const hard: readonly [string, Units, Instrument][] = [
  ["the longest and widest name", "in-fraction", { ...jumbo, name: "W".repeat(200) }],
  ["no dome", "mm", { ...jumbo, dome: { ...jumbo.dome, dishRadius: null, braceRadius: null } }],
  ["an overrun", "in", { ...jumbo, target: { kind: "shim", value: 3 } }],
];

for (const [what, units, instrument] of hard) {
  test(`one page with nothing clipped, true to size: ${what}`, async ({ page }) => {
    await openSheet(page, instrument, units);
    await expectPage(page);
  });
}

// jsQR reads the picture; it knows nothing of how the code was made.
test("the code, read by a camera's decoder, is the address that holds the instrument", async ({
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
