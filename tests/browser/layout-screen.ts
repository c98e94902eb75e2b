import { expect, type Locator, type Page } from "@playwright/test";

/** The four sizes the page is made for: tablet lying and standing, phone, desktop. */
export const sizes = [
  { width: 1180, height: 820 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
  { width: 1440, height: 900 },
] as const;

/** A number's field by its label. */
export const field = (page: Page, label: string): Locator =>
  page.getByRole("textbox", { name: label, exact: true });

export const measurements = (page: Page): Locator =>
  page.getByRole("region", { name: "Measurements" });

export const verdict = (page: Page): Locator => page.getByRole("region", { name: "Verdict" });

/** The section itself, without the handles that lie on it. */
export const drawing = (page: Page): Locator => page.getByRole("img", { name: /^Section along/ });

export const handleOf = (page: Page, name: string): Locator =>
  page.getByRole("slider", { name, exact: true });

/** The shim the verdict gives, mm. */
export async function shownShim(page: Page): Promise<number> {
  return numberIn(page.getByRole("region", { name: "Shim", exact: true }), /([\d.]+)\s*mm/);
}

/** One link of the verdict's chain, in the unit shown. */
export async function shownOutcome(page: Page, name: string): Promise<number> {
  const heading = page.getByRole("heading", { name, exact: true });
  const link = verdict(page).getByRole("listitem").filter({ has: heading });
  return numberIn(link, /(-?[\d.]+)\s*(?:mm|°)/);
}

/** Opens every group of fields that is folded. */
export async function unfoldAll(page: Page): Promise<void> {
  const folded = measurements(page).getByRole("button", { expanded: false });
  while ((await folded.count()) > 0) await folded.first().click();
}

/** The drawing is there, with lines in it, and nothing on the page says what is no number. */
export async function expectDrawn(page: Page): Promise<void> {
  await expect(drawing(page)).toBeVisible();
  const shown = await drawing(page).evaluate((svg) => ({
    lines: svg.querySelectorAll("path").length,
    text: document.body.textContent ?? "",
  }));
  expect(shown.lines).toBeGreaterThan(20);
  expect(shown.text).not.toMatch(/NaN|Infinity|undefined|\[object/);
}

async function numberIn(place: Locator, pattern: RegExp): Promise<number> {
  const text = ((await place.textContent()) ?? "").replace("−", "-");
  const number = pattern.exec(text)?.[1];
  if (number === undefined) throw new Error(`No number in “${text}”`);
  return Number(number);
}
