import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { buildShown, type Fault, faults, type Host, hostOf } from "./host.ts";
import { drawing, expectDrawn, field } from "./layout-screen.ts";
import { savingWord } from "./shelf-screen.ts";

// A press that nothing comes of is a fault to be named, not waited for.
test.use({ actionTimeout: 20_000 });

/** Every script and style sheet of the built page, by its path on the host. */
const parts =
  process.env["PARTS"]?.split(",") ??
  readdirSync(fileURLToPath(new URL("../../dist/assets", import.meta.url))).map(
    (name) => `/assets/${name}`,
  );

let host: Host;
test.beforeEach(async ({ baseURL }) => {
  host = await hostOf(baseURL ?? "");
});
test.afterEach(() => host.stop());

/** Each comes wrong in one manner, or with FAULTS=all in every one. */
const turns = parts.flatMap((part, i) =>
  (process.env["FAULTS"] === "all" ? faults : [faults[i % faults.length] as Fault]).map(
    (fault) => ({
      part,
      fault,
    }),
  ),
);

for (const { part, fault } of turns) {
  test(`${nameOf(part)} comes as ${fault} on a first and a later visit: it is said, the rest works, and it comes by itself or with a reload`, async ({
    page,
  }) => {
    host.spoil(fault, (path) => path === part);
    await page.goto(host.address);
    if (part.includes("/index-")) await expectWayBack(page);
    else if (part.endsWith(".css")) await expectPlainPage(page);
    else {
      const saidSo = await walk(page);
      expect(saidSo || !host.spoiled().has(part) || isQuiet(part), "it is said").toBe(true);
      await page.reload();
      await expect(drawing(page).or(told(page)).first()).toBeVisible();
      host.mend();
      if (!(await comesByItself(page))) {
        expect(fault, `${part} needs a reload`).toBe("garbage");
        await told(page).first().getByRole("button", { name: "Reload" }).click();
      }
      await expectWhole(page);
    }
  });
}

for (const fault of faults)
  test(`the worker comes as ${fault}: what it was to do is said not to be done, the rest works, and it is done once it comes`, async ({
    page,
  }) => {
    host.spoil(fault, (path) => path.includes("/worker-"));
    await page.goto(`${host.address}#/compare`);
    const map = page.getByRole("region", { name: "Map of two inputs" });
    await expect(map).toContainText("could not be worked out here");
    await expect(page.getByRole("region", { name: "How sure" })).toContainText("could not be run");
    await expect(page.getByRole("table").first()).toBeVisible();
    host.mend();
    await page.evaluate(() => dispatchEvent(new Event("online")));
    await expect(map).toHaveAttribute("aria-busy", "false");
    await expect(page.getByText(/100.?000 drawn/)).toBeVisible();
  });

test.describe("with a copy for use without a network", () => {
  test.use({ serviceWorkers: "allow" });

  test("once it is whole, a host that answers everything wrongly is not noticed", async ({
    page,
  }) => {
    await page.goto(host.address);
    await untilCopied(page);
    for (const fault of faults) {
      host.spoil(fault, () => true);
      await page.reload();
      expect(await walk(page), `${fault} is told of`).toBe(false);
      await expectWhole(page);
      host.mend();
    }
    console.log(`later visit: all parts spoiled at once in ${faults.length} ways, nothing missed`);
  });

  test("no bad answer gets into the copy or the update: it is refused, fetched again, and until then the page before goes on", async ({
    browser,
    page,
  }) => {
    // Some forty files, each in a first visit and in an update.
    test.setTimeout(600_000);
    const files = ["/index.html", ...parts];
    const counts = { first: 0, update: 0 };
    for (const [i, file] of files.entries()) {
      const fault = faults[i % faults.length] as Fault;
      const context = await browser.newContext({ serviceWorkers: "allow" });
      const visit = await context.newPage();
      // A page of the host that runs nothing of ours.
      await visit.goto(`${host.address}icon.svg`);
      host.spoil(fault, (path) => path === file);
      expect(await install(visit), `${file}, ${fault}, on a first visit`).toBe("refused");
      host.mend();
      expect(await install(visit), `${file}, on a first visit, mended`).toBe("whole");
      counts.first += 1;
      await context.close();
    }
    await page.goto(host.address);
    await untilCopied(page);
    for (const [i, file] of files.entries()) {
      const fault = faults[(i + 1) % faults.length] as Fault;
      host.goOver();
      host.spoil(fault, (path) => path === file);
      expect(await install(page), `${file}, ${fault}, in an update`).toBe("refused");
      counts.update += 1;
    }
    await page.reload();
    await expectDrawn(page);
    expect(await page.evaluate(buildShown)).toBe(1);
    host.mend();
    expect(await install(page)).toBe("whole");
    await page.reload();
    const loaded = page.waitForEvent("load");
    await page.getByRole("button", { name: "Use it now" }).click();
    await loaded;
    await expectDrawn(page);
    expect(await page.evaluate(buildShown)).toBe(files.length + 1);
    console.log(
      `offline copy: ${counts.first} bad answers refused on a first visit, ${counts.update} in updates, 0 kept`,
    );
  });
});

/** A part's name without what the build adds to it. */
function nameOf(part: string): string {
  return part.replace(/^.*\/|-.{8}\.\w+$/g, "");
}

/** Parts that are asked for ahead of need, and so are not told of until something needs them. */
const isQuiet = (part: string): boolean => part.includes("/worker-");

const missing = (page: Page): Locator => page.locator(".not-fetched");

/** What is missing where one looks: a closed dialog's own is not. */
const told = (page: Page): Locator => missing(page).filter({ visible: true });

/** Without its first script the page is a sentence and a way to try again. */
async function expectWayBack(page: Page): Promise<void> {
  const sentence = page.getByText("Rimwright has not started.");
  // It waits ten seconds for the script.
  await sentence.evaluate((shown) => {
    for (const animation of shown.getAnimations()) animation.finish();
  });
  await expect(sentence).toBeVisible();
  host.mend();
  await page.getByRole("link", { name: "Try again" }).click();
  await expectDrawn(page);
}

/** Without its style sheet the page is plain text, which says so, and works by keyboard until the sheet comes. */
async function expectPlainPage(page: Page): Promise<void> {
  await expect(told(page)).toHaveCount(1);
  await field(page, "Body length").fill("481");
  host.mend();
  expect(await comesByItself(page), "it comes by itself").toBe(true);
  await expectWhole(page);
}

/** States nonsense, changes a number and opens all there is to open. Whether anything was told to be missing. */
async function walk(page: Page): Promise<boolean> {
  await expect(drawing(page)).toBeVisible();
  await field(page, "Body length").fill("wide");
  // What tells of trouble comes late: both parts are there, or told to be missing in their places.
  await expect(page.locator(".trouble:not(:empty)").first()).toBeVisible();
  await expect(page.locator(".not-current, .pinned .not-fetched").first()).toBeVisible();
  let saidSo = await isTold(page);
  await field(page, "Body length").fill("481");
  await page.getByText("All the numbers").click();
  await page.getByRole("button", { name: "Start from…" }).click();
  await page.keyboard.press("Escape");
  saidSo ||= await isTold(page);
  for (const name of ["Compare", "Rim", "Bench", "Sheet", "Sticks", "Shelf"]) {
    await page.getByRole("link", { name, exact: true }).click();
    await expect(page.locator("main").or(told(page)).first()).toBeVisible();
    await expect(page.getByText("failed on these numbers")).toHaveCount(0);
    saidSo ||= await isTold(page);
  }
  await page.getByRole("link", { name: "Layout", exact: true }).click();
  await expect(drawing(page)).toBeVisible();
  return saidSo;
}

/** Whether anything is told to be missing: at once, or, where a bad answer was given, within a moment. */
async function isTold(page: Page): Promise<boolean> {
  if (host.spoiled().size === 0) return false;
  return missing(page)
    .first()
    .waitFor({ state: "attached", timeout: 1_000 })
    .then(
      () => true,
      () => false,
    );
}

/** Whether what is missing comes without a reload, now that it can. */
async function comesByItself(page: Page): Promise<boolean> {
  try {
    // Told again while it does not come: a try may still have been under way.
    await expect(async () => {
      await page.evaluate(() => dispatchEvent(new Event("online")));
      await expect(missing(page)).toHaveCount(0, { timeout: 1_000 });
      await expectSaving(page, 1_000);
    }).toPass({ timeout: 10_000 });
    return true;
  } catch {
    return false;
  }
}

/** All is there, what was typed too, and it is saved or can be. */
async function expectWhole(page: Page): Promise<void> {
  await expectDrawn(page);
  await expect(missing(page)).toHaveCount(0);
  await expect(field(page, "Body length")).toHaveValue("481");
  await expectSaving(page, 20_000);
}

/** What is on screen is saved or can be. */
async function expectSaving(page: Page, timeout: number): Promise<void> {
  const save = page.getByRole("button", { name: "Save", exact: true });
  await expect(save.or(savingWord(page))).toHaveText(/^(Save|saved|saving…)$/, { timeout });
}

const untilCopied = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => navigator.serviceWorker.controller !== null);

/** Has the browser fetch its copy, or a newer one. A worker that is refused becomes redundant. */
const install = (page: Page): Promise<"whole" | "refused"> =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.register("/sw.js");
    if (registration.active !== null) await registration.update();
    const { installing, waiting } = registration;
    if (installing === null) return waiting === null ? "refused" : "whole";
    return new Promise((told) => {
      const look = (): void => {
        if (installing.state === "redundant") told("refused");
        else if (installing.state !== "installing") told("whole");
      };
      installing.addEventListener("statechange", look);
      look();
    });
  });
