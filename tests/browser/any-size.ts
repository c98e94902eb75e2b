import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";
import { sizes } from "./layout-screen.ts";

/** axe finds nothing and nothing runs off sideways, at every size the page is made for, light and dark. */
export async function expectNoViolationAtAnySize(page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: "light" });
  const [narrowest, ...wider] = sizes.toSorted((a, b) => a.width - b.width);
  for (const size of [narrowest, ...wider]) {
    if (size === undefined) throw new Error("The page is made for no size.");
    await page.setViewportSize(size);
    await expect.poll(() => runsOff(page), `runs off at ${size.width}`).toBe(0);
    // A wider page changes nothing but what scrolls and where things are.
    const rules = size === narrowest ? undefined : ["scrollable-region-focusable", "target-size"];
    expect(await violations(page, rules), `at ${size.width}`).toEqual([]);
  }
  // Dark changes nothing but colours.
  await page.emulateMedia({ colorScheme: "dark" });
  expect(await violations(page, ["color-contrast"]), "dark").toEqual([]);
}

async function violations(page: Page, rules?: string[]): Promise<unknown[]> {
  const axe = new AxeBuilder({ page });
  if (rules !== undefined) axe.withRules(rules);
  const found = await axe.analyze();
  return found.violations.map(({ id, help, nodes }) => ({
    id,
    help,
    where: nodes.map(({ html }) => html.slice(0, 160)),
  }));
}

/** How much wider the page is than its window, px. */
export const runsOff = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What answers a touch on less than 44 px, less half a pixel of rounding, either way. */
export const tooSmallToTouch = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll(
        "button, select, input, textarea, summary, a[href], .button, [role=slider]",
      ),
    ]
      .filter((element) => !element.matches(".unseen"))
      .map(
        (element) =>
          (element.matches("[type=radio], [type=checkbox]") && element.closest("label")) || element,
      )
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
      .map(({ element, box }) => `${element.outerHTML.slice(0, 90)} ${box.width}x${box.height}`),
  );
