import { expect, type Page, test } from "@playwright/test";
import { buildShown, type Host, hostOf } from "./host.ts";
import { drawing, expectDrawn, field } from "./layout-screen.ts";
import { nameField, row, saveAs, savingWord } from "./shelf-screen.ts";

test.use({ serviceWorkers: "allow" });

let server: Host;
test.beforeEach(async ({ baseURL }) => {
  server = await hostOf(baseURL ?? "");
});
test.afterEach(() => server.stop());

test("a newer page waits until it is wanted, comes with every edit in place, and the other tab is told", async ({
  page,
  context,
}) => {
  await visitTwice(page, server.address);
  const other = await context.newPage();
  await other.goto(server.address);
  await expectDrawn(other);
  await saveAs(page, "Updated", "480");

  server.goOver();
  await lookForNewer(page);
  const ready = page.getByText("A newer Rimwright is ready");
  await expect(ready).toBeVisible();
  await field(page, "Body length").fill("481");
  await page.reload();
  await expect(field(page, "Body length")).toHaveValue("481");
  expect(await page.evaluate(buildShown)).toBe(1);

  await expect(ready).toBeVisible();
  await field(page, "Body length").fill("482");
  const reloaded = page.waitForEvent("load");
  await page.getByRole("button", { name: "Use it now" }).click();
  await reloaded;
  expect(await page.evaluate(buildShown)).toBe(2);
  await expect(field(page, "Body length")).toHaveValue("482");
  await expect(page.getByText("A newer Rimwright")).toHaveCount(0);

  const told = other.getByText("Another tab has gone over to a newer Rimwright");
  await expect(told).toBeVisible();
  await field(other, "Body length").fill("483");
  const followed = other.waitForEvent("load");
  await other.getByRole("button", { name: "Reload", exact: true }).click();
  await followed;
  expect(await other.evaluate(buildShown)).toBe(2);
  await expect(field(other, "Body length")).toHaveValue("483");
  await expect(savingWord(other)).toHaveText("saved");
  await expect(field(page, "Body length")).toHaveValue("483");
});

test("with the server gone every view works, workers too, and edits are kept", async ({ page }) => {
  await visitTwice(page, server.address);
  await saveAs(page, "Out of reach", "480");
  await server.stop();
  await page.reload();
  await expectDrawn(page);
  await field(page, "Body length").fill("481");
  await expect(savingWord(page)).toHaveText("saved");
  for (const name of ["Compare", "Rim", "Bench", "Sheet", "Sticks", "Shelf"]) {
    await page.getByRole("link", { name, exact: true }).click();
    await expect(page.locator("main")).toBeVisible();
    await expect(page.getByText("failed on these numbers")).toHaveCount(0);
  }
  await expect(row(page, "Out of reach")).toBeVisible();

  // The sticks' figures come from a worker.
  await page.goto(`${server.address}#/sticks`);
  await expect(page.getByRole("region", { name: "One shim for the shop" })).toHaveAttribute(
    "aria-busy",
    "false",
  );
  expect(page.workers()).not.toHaveLength(0);
  // Paper needs nothing of the server either.
  await page.goto(`${server.address}#/sheet`);
  await expect(page.locator("main svg").first()).toBeVisible();
  expect((await page.pdf()).byteLength).toBeGreaterThan(10_000);

  await openAgain(page, `${server.address}#/layout`);
  await expect(nameField(page)).toHaveValue("Out of reach");
  await expect(field(page, "Body length")).toHaveValue("481");
});

test.describe("without a copy for use without a network", () => {
  test.use({ serviceWorkers: "block" });

  test("a page whose host has gone over to a newer one says so, and a reload brings that with every edit", async ({
    page,
  }) => {
    await page.goto(server.address);
    await expectDrawn(page);
    await field(page, "Body length").fill("481");
    server.goOver();
    // The older page's files are gone: what is asked for before the newer page is theirs.
    let older = true;
    server.spoil("404", (path) => {
      older &&= path !== "/";
      return older && path.startsWith("/assets/");
    });
    await page.getByRole("link", { name: "Compare", exact: true }).click();
    const told = page.locator(".not-fetched", { hasText: "Compare" });
    await expect(told).toContainText("could not be fetched");
    await page.getByRole("link", { name: "Layout", exact: true }).click();
    await field(page, "Body length").fill("482");
    await page.getByRole("link", { name: "Compare", exact: true }).click();
    await told.getByRole("button", { name: "Reload" }).click();
    await expect(page.getByRole("region", { name: "Map of two inputs" })).toBeVisible();
    expect(await page.evaluate(buildShown)).toBe(2);
    await page.getByRole("link", { name: "Layout", exact: true }).click();
    await expect(field(page, "Body length")).toHaveValue("482");
    await expect(savingWord(page)).toHaveText("saved");
  });
});

/** Opens the page and lets its worker take it over, which then answers for it. */
async function visitTwice(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  await expect(drawing(page)).toBeVisible();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

const lookForNewer = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
  });

async function openAgain(page: Page, address: string): Promise<void> {
  await page.goto("about:blank");
  await page.goto(address);
  await expectDrawn(page);
}
