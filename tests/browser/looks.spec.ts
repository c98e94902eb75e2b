import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";
import { expectDrawn, field, sizes, unfoldAll, verdict } from "./layout-screen.ts";
import { test } from "./page.ts";

for (const viewport of sizes) {
  const size = `${viewport.width}x${viewport.height}`;

  for (const colorScheme of ["light", "dark"] as const) {
    test(`axe finds nothing at ${size}, ${colorScheme}`, async ({ page }) => {
      await open(page, viewport, colorScheme);
      await expectNoViolation(page);
    });
  }

  test(`drawing and verdict stay in sight while a field far down is edited at ${size}`, async ({
    page,
  }) => {
    await open(page, viewport, "light");
    await unfoldAll(page);
    await field(page, "Action, treble").focus();
    await field(page, "Action, treble").fill("1.9");
    await expect(page.getByRole("region", { name: "Shim", exact: true })).toBeInViewport();
    await expect(page.getByRole("figure")).toBeInViewport({ ratio: 0.9 });
    await expect(field(page, "Action, treble")).toBeInViewport({ ratio: 1 });
  });

  test(`nothing runs off sideways and all can be touched at ${size}`, async ({ page }) => {
    await open(page, viewport, "light");
    await unfoldAll(page);
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBe(0);
    expect(await tooSmallToTouch(page)).toEqual([]);
  });
}

for (const colorScheme of ["light", "dark"] as const) {
  test(`axe finds nothing with all open, turned over and in trouble, ${colorScheme}`, async ({
    page,
  }) => {
    await open(page, sizes[1], colorScheme);
    await unfoldAll(page);
    for (const summary of await page.locator("summary").all()) await summary.click();
    await page.getByRole("button", { name: "Turn over" }).click();
    await field(page, "Body length").fill("banana");
    await field(page, "Dish radius").fill("1 mm");
    await expectNoViolation(page);
    await page.getByRole("button", { name: "Start from…" }).click();
    await expectNoViolation(page);
  });
}

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

async function expectNoViolation(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const told = violations.map(({ id, help, nodes }) => ({
    id,
    help,
    where: nodes.map(({ html }) => html.slice(0, 160)),
  }));
  expect(told).toEqual([]);
}

/** What answers a touch on less than 44 px, less half a pixel of rounding, either way. */
function tooSmallToTouch(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("button, input, textarea, summary, a[href], [role=slider]")]
      .map(
        (element) =>
          (element.matches("[type=radio], [type=checkbox]") && element.closest("label")) || element,
      )
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
      .map(({ element, box }) => `${element.outerHTML.slice(0, 90)} ${box.width}x${box.height}`),
  );
}
