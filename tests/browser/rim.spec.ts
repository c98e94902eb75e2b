import { expect, type Page } from "@playwright/test";
import { outlinePoints } from "../support/precise-outline.ts";
import { preset } from "../support/preset.ts";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { test } from "./page.ts";
import { savingWord } from "./shelf-screen.ts";

const points = outlinePoints(preset("orchestra-size").body, 40);

async function openRim(page: Page, width = 1180, height = 820): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.goto("/#/rim");
  await expect(page.getByRole("heading", { name: "Plan", exact: true })).toBeVisible();
  await expect(page.getByRole("img", { name: /^Plan of the rim/ })).toBeVisible();
}

/** Texts of all drawings that share ground on the screen, as the browser sets them. */
const overlapping = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("svg.scene")].flatMap((svg) => {
      const texts = [...svg.querySelectorAll("text")].map((text) => {
        const { x, y, width, height } = text.getBBox();
        // The box of a line of type reaches well over and under its figures.
        const ink = { top: y + 0.2 * height, bottom: y + 0.85 * height };
        return { said: text.textContent ?? "", left: x, right: x + width, ...ink };
      });
      return texts.flatMap((a, i) =>
        texts
          .slice(i + 1)
          .filter(
            (b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom,
          )
          .map((b) => `${a.said} / ${b.said}`),
      );
    }),
  );

const sizes = [
  [390, 844],
  [820, 1180],
  [1180, 820],
  [1440, 900],
] as const;

/** Every drawing has been laid out anew for the width it has now. */
const laidOut = (page: Page): Promise<unknown> =>
  page.waitForFunction(() =>
    [...document.querySelectorAll(".rim-figure")].every((room) => {
      const width = Number(room.querySelector("svg")?.getAttribute("width"));
      return Math.abs(width - room.clientWidth) < 1;
    }),
  );

test("no figure meets another at any size, in any unit, and nothing runs off sideways", async ({
  page,
}) => {
  await openRim(page);
  for (const [width, height] of sizes) {
    await page.setViewportSize({ width, height });
    for (const units of ["Millimetres", "Inches, decimal", "Inches in fractions, to 1/64"]) {
      await page.getByRole("button", { name: units }).click();
      await laidOut(page);
      expect(await overlapping(page), `${units} at ${width}`).toEqual([]);
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(over, `at ${width}`).toBe(0);
    }
  }
});

test("axe finds nothing with all open, at any size, light or dark", async ({ page }) => {
  await openRim(page);
  await page.getByLabel("Or paste it here").fill(points.map((p) => p.join(",")).join("\n"));
  await expect(page.getByRole("button", { name: "Use this outline" })).toBeVisible();
  for (const summary of await page.locator(".rim summary").all()) await summary.click();
  await page.getByRole("button", { name: "Add a back brace" }).click();
  await expectNoViolationAtAnySize(page);
});

test("the stations follow the spacing asked for, and mark most and least", async ({ page }) => {
  await openRim(page);
  const table = page.getByRole("table").first();
  await expect(table.getByRole("row", { name: /least comes off/ })).toContainText("0.00");
  await expect(table.getByRole("row", { name: /most comes off/ })).toContainText("neck end");
  const before = await table.getByRole("row").count();
  await page.getByRole("textbox", { name: "Stations every" }).fill("100");
  await expect(table.getByRole("row", { name: /^100\.0 / })).toBeVisible();
  expect(await table.getByRole("row").count()).toBeLessThan(before / 2);
  await page.getByRole("textbox", { name: "Stations every" }).fill("nonsense");
  await expect(page.getByText("is not a number")).toBeVisible();
  await expect(table.getByRole("row", { name: /^100\.0 / })).toBeVisible();
});

test("a strip too narrow is told by how much; braces and dishes follow what is stated", async ({
  page,
}) => {
  await openRim(page);
  await page.getByRole("textbox", { name: "Strip you have, width" }).fill("100");
  await expect(page.getByText(/^Too narrow: 100 mm falls [\d.]+ mm short/)).toBeVisible();
  await page.getByRole("textbox", { name: "Strip you have, width" }).fill("5 in");
  await expect(page.getByText(/^Wide enough, with [\d.]+ mm to spare/)).toBeVisible();
  // Over 24 in a dish of 28 ft is 5.445 mm deep, of 15 ft 10.171: r − √(r² − c²/4) by hand.
  await page.getByRole("textbox", { name: "Top dish, radius" }).fill("28 ft");
  await page.getByRole("textbox", { name: "Top dish, across" }).fill("24 in");
  await expect(page.getByText(/dish of this radius is 5\.4[45] mm deep/)).toBeVisible();
  await page.getByRole("textbox", { name: "Back dish, radius" }).fill("15 ft");
  await page.getByRole("textbox", { name: "Back dish, across" }).fill("24 in");
  await expect(page.getByText(/dish of this radius is 10\.2 mm deep/)).toBeVisible();
  await page.getByRole("textbox", { name: "Top brace, length" }).fill("24 in");
  await page.getByRole("textbox", { name: "Top brace, radius" }).fill("28 ft");
  await expect(page.getByText(/Top brace, .* rises 5\.4[45] mm at the middle/)).toBeVisible();
  await page.getByRole("button", { name: "Add a top brace" }).click();
  await page.getByRole("textbox", { name: "Top brace 2, length" }).fill("12 in");
  await page.getByRole("textbox", { name: "Top brace 2, radius" }).fill("25 ft");
  // 1.524 mm over 12 in, by the same; at 100 mm from the middle 0.867: the drop there is 0.656.
  await expect(page.getByText(/Top brace 2, .* rises 1\.52 mm at the middle/)).toBeVisible();
  const row = page
    .getByRole("table", { name: /^Top braces/ })
    .getByRole("row", { name: /^100\.0 / });
  expect(await row.getByRole("cell").allTextContents()).toEqual(["4.86", "0.59", "0.87", "0.66"]);
  await page.getByRole("textbox", { name: "Top brace 2, radius" }).fill("150");
  await expect(page.getByText(/Top brace 2: a brace cannot be longer/)).toBeVisible();
});

test("a tracing in inches becomes the outline, lasts over a reload, and comes off again", async ({
  page,
}) => {
  await openRim(page);
  const tail = page
    .getByRole("table")
    .first()
    .getByRole("row", { name: /neck end/ });
  const lengthBefore = await tail.textContent();
  // 2 % longer than the preset, so that it is seen to be used.
  const csv = points.map(([x, y]) => `${(x * 1.02) / 25.4};${y / 25.4}`).join("\n");
  await page.getByLabel("Or paste it here").fill(`x;y\n${csv}`);
  await expect(page.getByText(/a body is 100 mm to 1500 mm/)).toBeVisible();
  await page.getByLabel("Drawn in").selectOption("in");
  await expect(page.getByText(/A smooth curve through \d+ places, 501.8 mm long/)).toBeVisible();
  await page.getByRole("button", { name: "Use this outline" }).click();
  await expect(page.getByText(/follows a traced outline of \d+ places/)).toBeVisible();
  await expect(tail).toContainText("501.8");
  await expect(savingWord(page)).toHaveText("saved");
  await page.reload();
  await expect(page.getByText(/follows a traced outline/)).toBeVisible();
  await expect(tail).toContainText("501.8");
  expect(await tail.textContent()).not.toBe(lengthBefore);
  await page.getByRole("button", { name: "Take the tracing off" }).click();
  await expect(page.getByText("drawn through the stated widths")).toBeVisible();
});

test("a whole outline from an SVG file says its own unit; bare path data with curves is read", async ({
  page,
}) => {
  await openRim(page);
  const half = points.map(([x, y]) => `${x / 2} ${y / 2}`);
  const other = points.map(([x, y]) => `${x / 2} ${-y / 2}`).reverse();
  const d = `M${half.join("L")}L${other.join("L")}Z`;
  // Moved and turned within the file.
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="600mm" viewBox="0 0 300 300">
    <path d="M0 0L9 9L3 1"/><g transform="translate(20 150) rotate(31)"><path d="${d}"/></g></svg>`;
  await page.getByLabel("A file, .csv or .svg").setInputFiles({
    ...{ name: "mould.svg", mimeType: "image/svg+xml", buffer: Buffer.from(svg) },
  });
  await expect(
    page.getByText(/A smooth curve through \d+ places, 49[12](\.\d)? mm long/),
  ).toBeVisible();
  await expect(page.getByText("The drawing holds 2 lines; the longest is taken.")).toBeVisible();
  const curves =
    "M0 0C0 106 56 192 125 192 200 192 217 120 292 120 338 120 349 143 395 143 449 143 492 92 492 30";
  await page.getByLabel("Or paste it here").fill(curves);
  await expect(page.getByText(/A smooth curve through \d+ places, 492 mm long/)).toBeVisible();
});

test("tail and neck end can be put elsewhere, and the drawing turned end for end", async ({
  page,
}) => {
  await openRim(page);
  await page.getByLabel("Or paste it here").fill(points.map((p) => p.join(",")).join("\n"));
  await expect(page.getByText(/492 mm long, within [\d.]+ mm of everything drawn/)).toBeVisible();
  await page.getByText("Tail and neck end on the drawing").click();
  const tail = page.getByRole("textbox", { name: "Tail, x" });
  await tail.focus();
  await tail.pressSequentially("0");
  await expect(tail).toBeFocused();
  await tail.fill("12");
  await expect(page.getByText(/does not start at the tail/)).toBeVisible();
  await tail.fill("0");
  await expect(page.getByRole("button", { name: "Use this outline" })).toBeVisible();
  await page.getByRole("button", { name: "Turn end for end" }).click();
  await expect(tail).toHaveValue("492");
  await expect(page.getByRole("button", { name: "Use this outline" })).toHaveCount(0);
});

test("what is no outline is refused with its reason, and does no harm", async ({ page }) => {
  await openRim(page);
  const paste = page.getByLabel("Or paste it here");
  await paste.fill(points.map(([x, y]) => `${x > 250 && x < 270 ? x - 30 : x}, ${y}`).join("\n"));
  await expect(page.getByText(/runs back toward the tail by/)).toBeVisible();
  await expect(page.getByRole("button", { name: "Use this outline" })).toHaveCount(0);
  await paste.fill("0,0\n1,two\n");
  await expect(page.getByText("Line 2 does not hold an x and a y.")).toBeVisible();
  await paste.fill(
    '<svg xmlns="http://www.w3.org/2000/svg" onload="document.title=1"><script>document.title=2</script><image href="https://example.com/x.png"/><path d="nonsense"/></svg>',
  );
  await expect(page.getByText("There is no line in this drawing.")).toBeVisible();
  await paste.fill("<svg");
  await expect(page.getByText("This is not an SVG drawing that can be read.")).toBeVisible();
  await expect(page).toHaveTitle("Rimwright");
});
