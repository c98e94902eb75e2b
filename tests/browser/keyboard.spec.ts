import { expect, type Page } from "@playwright/test";
import { field, grip, shownShim } from "./layout-screen.ts";
import { test } from "./page.ts";

test("the whole job is done by keyboard alone", async ({ page }) => {
  await page.goto("/");
  const first = await shownShim(page);

  await tabTo(page, "Body length");
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("500");
  await expect(field(page, "Body length")).toHaveValue("500");
  await page.keyboard.press("ArrowUp");
  await expect(field(page, "Body length")).toHaveValue("501");
  await page.keyboard.press("Shift+ArrowUp");
  await expect(field(page, "Body length")).toHaveValue("511");
  const longer = await shownShim(page);
  expect(longer).not.toBe(first);

  await tabTo(page, "Break");
  const flat = Number(await field(page, "Break from the neck end").inputValue());
  await page.keyboard.press("ArrowLeft");
  await expect(field(page, "Break from the neck end")).toHaveValue(String(flat + 1));

  await tabTo(page, "Turn over");
  await page.keyboard.press("Space");
  await expect(page.getByRole("button", { name: "Turn over" })).toHaveAttribute(
    "aria-pressed",
    "true",
  );
  await page.keyboard.press("Space");

  await tabTo(page, "Saddle exposed", "radio");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await expect(page.getByRole("radio", { name: /^Shim/ })).toBeChecked();
  await tabTo(page, "Shim");
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type("7.5");
  expect(await shownShim(page)).toBe(7.5);
});

test("what has the focus can be seen, and Tab goes round all of it", async ({ page }) => {
  await page.goto("/");
  await expect(grip(page, "Break")).toBeVisible();
  const seen = new Set<string>();
  for (let press = 0; press < 150; press++) {
    await page.keyboard.press("Tab");
    const focus = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const ring = outlineStyle !== "none" && Number.parseFloat(outlineWidth) > 0;
      const name = element.getAttribute("aria-label") ?? element.textContent ?? "";
      return { key: `${element.tagName} ${element.id} ${name}`, ring };
    });
    if (focus === null) break;
    expect(focus.ring, `a ring round ${focus.key}`).toBe(true);
    seen.add(focus.key);
  }
  expect(seen.size).toBeGreaterThan(25);
  expect(seen.size).toBeLessThan(150);
});

/** Presses Tab until what is named so has the focus. */
async function tabTo(page: Page, name: string, role?: string): Promise<void> {
  for (let press = 0; press < 150; press++) {
    await page.keyboard.press("Tab");
    const focused = page.locator(":focus");
    if ((await focused.count()) === 0) continue;
    const found = await focused.evaluate(
      (element, wanted) => {
        const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : [];
        const said =
          element.getAttribute("aria-label") ?? labels[0]?.textContent ?? element.textContent;
        const kind = element instanceof HTMLInputElement ? element.type : "";
        return (
          said?.trim() === wanted.name && (wanted.role ? kind === wanted.role : kind !== "radio")
        );
      },
      { name, role },
    );
    if (found) return;
  }
  throw new Error(`Tab never reaches “${name}”.`);
}
