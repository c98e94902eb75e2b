import { expect } from "@playwright/test";
import { field, shownShim } from "./layout-screen.ts";
import { test } from "./page.ts";

test("a reload keeps the instrument, its texts as typed, and how it is drawn", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("textbox", { name: "Name of the instrument" }).fill("Workbench no. 7");
  await field(page, "Body length").fill("19 1/4 in");
  await page.getByRole("radio", { name: "Pitch" }).check();
  await field(page, "Pitch").fill("1.3");
  await page.getByRole("button", { name: "Heights 10 times" }).click();
  const shim = await shownShim(page);

  await page.reload();
  expect(await shownShim(page)).toBe(shim);
  await expect(page.getByRole("textbox", { name: "Name of the instrument" })).toHaveValue(
    "Workbench no. 7",
  );
  await expect(field(page, "Body length")).toHaveValue("19 1/4 in");
  await expect(field(page, "Pitch")).toHaveValue("1.3");
  await expect(page.getByRole("button", { name: "Heights 10 times" })).toHaveAttribute(
    "aria-pressed",
    "true",
  );
});

test("another instrument can be started from, and the one before put back", async ({ page }) => {
  await page.goto("/");
  await field(page, "Body length").fill("501");
  const shim = await shownShim(page);
  await page.getByRole("button", { name: "Start from…" }).click();
  await page.getByRole("button", { name: /^Jumbo size/ }).click();
  expect(await shownShim(page)).not.toBe(shim);
  await page.getByRole("button", { name: "Start from…" }).click();
  await page.getByRole("button", { name: /^Back to/ }).click();
  expect(await shownShim(page)).toBe(shim);
  await expect(field(page, "Body length")).toHaveValue("501");
});
