import { expect } from "@playwright/test";
import { field, handleOf, shownShim } from "./layout-screen.ts";
import { test } from "./page.ts";
import { tabTo } from "./tab-to.ts";

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

  await tabTo(page, "Saddle exposed", { radio: true });
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
  await expect(handleOf(page, "Break")).toBeVisible();
  const seen = new Set<string>();
  for (let press = 0; press < 150; press++) {
    await page.keyboard.press("Tab");
    const focus = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const outlined = outlineStyle !== "none" && Number.parseFloat(outlineWidth) > 0;
      // A handle on the drawing has a stroke in place of an outline, which not every browser paints there.
      const reach = element.querySelector(".handle-reach");
      const stroked = reach !== null && getComputedStyle(reach).stroke !== "none";
      const ring = outlined || stroked;
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
