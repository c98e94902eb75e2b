import { expect } from "@playwright/test";
import { drawing } from "./layout-screen.ts";
import { test } from "./page.ts";

test.use({ serviceWorkers: "allow" });

test("after the first visit every view opens with the network gone", async ({ page, context }) => {
  await page.goto("./");
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  // The worker answers for pages that open once it is there.
  await page.reload();
  await context.setOffline(true);
  await page.reload();
  await expect(drawing(page)).toBeVisible();
  for (const name of ["Compare", "Rim", "Bench", "Sheet", "Sticks", "Shelf"]) {
    await page.getByRole("link", { name, exact: true }).click();
    await expect(page.locator("main")).toBeVisible();
  }
});
