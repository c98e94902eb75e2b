import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";
import { expectNoViolationAtAnySize, runsOff, tooSmallToTouch } from "./any-size.ts";
import { expectDrawn, field, sizes, unfoldAll, verdict } from "./layout-screen.ts";
import { test } from "./page.ts";

for (const viewport of sizes) {
  const size = `${viewport.width}x${viewport.height}`;

  test(`drawing and verdict stay in sight while a field far down is edited at ${size}, and all can be touched`, async ({
    page,
  }) => {
    await open(page, viewport, "light");
    await unfoldAll(page);
    expect(await runsOff(page)).toBe(0);
    expect(await tooSmallToTouch(page)).toEqual([]);
    await field(page, "Action, treble").focus();
    await field(page, "Action, treble").fill("1.9");
    await expect(page.getByRole("region", { name: "Shim", exact: true })).toBeInViewport();
    await expect(page.getByRole("figure")).toBeInViewport({ ratio: 0.9 });
    await expect(field(page, "Action, treble")).toBeInViewport({ ratio: 1 });
  });
}

test("the header leaves nothing out of the window and has room for a name, at any width", async ({
  page,
}) => {
  await open(page, sizes[0], "light");
  await page.getByRole("button", { name: "Start from…" }).click();
  await page.getByRole("button", { name: /^Jumbo size/ }).click();
  await expect(page.getByRole("button", { name: "Undo" })).toBeVisible();
  for (const width of [390, 820, 1024, 1180, 1280, 1339, 1340, 1440]) {
    await page.setViewportSize({ width, height: 800 });
    const header = page.getByRole("banner");
    for (const part of await header.locator("a, input, button:visible").all())
      await expect(part).toBeInViewport({ ratio: 1 });
    const name = await page.getByLabel("Name of the instrument").boundingBox();
    expect(name?.width, `the name at ${width}`).toBeGreaterThanOrEqual(152);
    if (width >= 1180) expect((await header.boundingBox())?.height).toBeLessThanOrEqual(62);
  }
});

test("nothing in the header moves while it tells how saving stands", async ({ page }) => {
  await open(page, sizes[0], "light");
  await field(page, "Body length").fill("481");
  const word = page.locator(".saving");
  await expect(word).toHaveText("saved");
  for (const width of [390, 820, 1180, 1440]) {
    await page.setViewportSize({ width, height: 800 });
    const places = async (): Promise<unknown> =>
      Promise.all(
        (await page.getByRole("banner").locator("a, input, button").all()).map((part) =>
          part.boundingBox(),
        ),
      );
    const before = await places();
    for (const said of ["saving…", "not saved"]) {
      await word.evaluate((shown, text) => {
        if (shown.firstChild instanceof Text) shown.firstChild.data = text;
      }, said);
      expect(await places(), `“${said}” at ${width}`).toEqual(before);
    }
  }
});

test("axe finds nothing on a first visit, at any size, light or dark", async ({ page }) => {
  test.slow();
  await open(page, sizes[2], "light");
  await expectNoViolationAtAnySize(page);
});

test("axe finds nothing with all open, turned over and in trouble, at any size, light or dark", async ({
  page,
}) => {
  test.slow();
  await open(page, sizes[1], "light");
  await page.getByRole("region", { name: "To begin with" }).getByRole("button").click();
  await unfoldAll(page);
  for (const summary of await page.locator("summary").all()) await summary.click();
  await page.getByRole("button", { name: "Turn over" }).click();
  await field(page, "Body length").fill("banana");
  await field(page, "Dish radius").fill("1 mm");
  await expectNoViolationAtAnySize(page);
  await page.getByRole("button", { name: "Start from…" }).click();
  await expectNoViolationAtAnySize(page);
});

test("the verdict's figures stand out from their paper by 7 to 1, light and dark", async ({
  page,
}) => {
  for (const colorScheme of ["light", "dark"] as const) {
    await open(page, sizes[0], colorScheme);
    const { violations } = await new AxeBuilder({ page })
      .include(".shim-figures")
      .include(".chain-value")
      .withRules(["color-contrast-enhanced"])
      .analyze();
    expect(violations.flatMap(({ nodes }) => nodes.map(({ html }) => html))).toEqual([]);
  }
});

async function open(
  page: Page,
  viewport: (typeof sizes)[number],
  colorScheme: "light" | "dark",
): Promise<void> {
  await page.setViewportSize(viewport);
  await page.emulateMedia({ colorScheme });
  await page.goto("/");
  await expect(verdict(page)).toBeVisible();
  await expectDrawn(page);
}
