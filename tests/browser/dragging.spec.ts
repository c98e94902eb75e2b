import { expect, type Locator, type Page } from "@playwright/test";
import { expectDrawn, field, handleOf, shownShim } from "./layout-screen.ts";
import { test } from "./page.ts";

test("the break dragged tailward lengthens the flat while it is held, and changes the shim", async ({
  page,
}) => {
  await page.goto("/");
  const flat = field(page, "Break from the neck end");
  const before = { flat: Number(await flat.inputValue()), shim: await shownShim(page) };

  await takeHold(page, handleOf(page, "Break"));
  await moveBy(page, -30, 0);
  const held = Number(await flat.inputValue());
  expect(held).toBeGreaterThan(before.flat + 5);
  await moveBy(page, -20, 0);
  await page.mouse.up();

  expect(Number(await flat.inputValue())).toBeGreaterThan(held);
  expect(await shownShim(page)).not.toBe(before.shim);
  await expectDrawn(page);
});

test("the shim dragged thicker becomes the target, and says so", async ({ page }) => {
  await page.goto("/");
  const before = await shownShim(page);
  await takeHold(page, handleOf(page, "Shim"));
  await moveBy(page, 0, 24);
  await page.mouse.up();
  expect(await shownShim(page)).toBeGreaterThan(before);
  await expect(page.getByText(/target is now “Shim”/)).toBeVisible();
  await expect(page.getByRole("radio", { name: /^Shim/ })).toBeChecked();
});

test("the saddle dragged up asks for more of it, and for a thicker shim", async ({ page }) => {
  await page.goto("/");
  const saddle = field(page, "Saddle exposed");
  const before = { saddle: Number(await saddle.inputValue()), shim: await shownShim(page) };
  await takeHold(page, handleOf(page, "Saddle exposed"));
  await moveBy(page, 0, -15);
  await page.mouse.up();
  expect(Number(await saddle.inputValue())).toBeGreaterThan(before.saddle);
  expect(await shownShim(page)).toBeGreaterThan(before.shim);
});

test("nothing dragged far off the drawing breaks it", async ({ page }) => {
  await page.goto("/");
  for (const name of ["Break", "Shim", "Saddle exposed"]) {
    await takeHold(page, handleOf(page, name));
    await moveBy(page, -3000, -3000);
    await moveBy(page, 6000, 6000);
    await page.mouse.up();
    await expectDrawn(page);
    await page.reload();
  }
});

let hand = { x: 0, y: 0 };

async function takeHold(page: Page, handle: Locator): Promise<void> {
  const box = await handle.boundingBox();
  if (box === null) throw new Error("The handle is not to be seen.");
  hand = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.move(hand.x, hand.y);
  await page.mouse.down();
}

async function moveBy(page: Page, x: number, y: number): Promise<void> {
  hand = { x: hand.x + x, y: hand.y + y };
  await page.mouse.move(hand.x, hand.y, { steps: 5 });
}
