import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

/** axe finds nothing and nothing runs off sideways, on phone and tablet, light and dark. */
export async function expectNoViolationAtAnySize(page: Page): Promise<void> {
  for (const [width, height] of [
    [390, 844],
    [820, 1180],
    [1180, 820],
  ] as const) {
    await page.setViewportSize({ width, height });
    // A wider page changes nothing but what scrolls and where things are.
    const axe = new AxeBuilder({ page });
    if (width > 390) axe.withRules(["scrollable-region-focusable", "target-size"]);
    expect((await axe.analyze()).violations).toEqual([]);
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  }
  // Dark changes nothing but colours.
  await page.emulateMedia({ colorScheme: "dark" });
  const dark = await new AxeBuilder({ page }).withRules(["color-contrast"]).analyze();
  expect(dark.violations).toEqual([]);
}
