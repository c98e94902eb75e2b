import { expect, type Locator, type Page } from "@playwright/test";
import { stepNames, stepsOf } from "../../src/instrument/as-built/steps.ts";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { sizes } from "./layout-screen.ts";
import { test } from "./page.ts";
import { readPdf } from "./pdf-lines.ts";
import { tabTo } from "./tab-to.ts";

const tablet = { width: 1180, height: 820 };
const phone = { width: 390, height: 844 };

const steps = [
  "Level the rim",
  "Mark the break and the linings",
  "Dish the tail part",
  "Check the dish",
  "Set the shim",
  "Sand the flat to the mark",
  "Check the overrun and feather it",
  "Offer up the top",
  "After the glue: the straightedge gap",
  "Neck and fingerboard",
  "Bridge",
  "Saddle",
  "Strings on",
] as const;

/** What an invented builder measures on the way: it drifts. mm. */
const measured: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "Set the shim": { "Shim used": "8.1", "Stick's width under the rim": "21" },
  "Sand the flat to the mark": { "Break reached, from the neck end": "101" },
  "Offer up the top": { "Straightedge gap, top offered up": "1.5" },
  "After the glue: the straightedge gap": { "Straightedge gap, top glued": "1.3" },
};

const field = (page: Page, name: string): Locator =>
  page.getByRole("textbox", { name, exact: true });

const outlook = (page: Page): Locator => page.getByRole("region", { name: "Outlook" });

const panel = (page: Page, name: string): Locator =>
  page.getByRole("navigation", { name: "At the bench" }).getByRole("button", { name });

const step = (page: Page, name: string): Locator =>
  page.getByRole("navigation", { name: "Steps" }).getByRole("button", { name });

const atStep = (page: Page, name: string): Promise<void> =>
  expect(page.getByRole("heading", { level: 2, name, exact: true })).toBeVisible();

async function openBench(page: Page, viewport = tablet): Promise<void> {
  await page.setViewportSize(viewport);
  await page.goto("/#/bench");
  await atStep(page, "Level the rim");
}

for (const viewport of [tablet, phone]) {
  test(`one instrument from rim to strings, corrected and learnt from, at ${viewport.width}x${viewport.height}`, async ({
    page,
  }) => {
    test.setTimeout(180_000);
    await openBench(page, viewport);
    await expect(outlook(page)).toContainText("Nothing is measured yet");
    for (const [i, name] of steps.entries()) {
      await atStep(page, name);
      for (const [label, text] of Object.entries(measured[name] ?? {}))
        await field(page, label).fill(text);
      if (name === "Bridge") {
        await correctTheBridge(page);
        await atStep(page, name);
      }
      if (name === "Strings on") break;
      await page.reload();
      await atStep(page, name);
      for (const [label, text] of Object.entries(measured[name] ?? {}))
        await expect(field(page, label)).toHaveValue(text);
      await page.getByRole("button", { name: "Done", exact: true }).click();
      await atStep(page, steps[i + 1] ?? "");
      await expect(step(page, name)).toContainText("done");
    }
    await page.getByRole("button", { name: "As expected: String height over the top" }).click();
    await page.getByRole("button", { name: "Finish this instrument" }).click();
    await page.reload();
    await expect(page.getByText(/^Finished on 20\d\d-\d\d-\d\d/)).toBeVisible();
    await panel(page, "Learning").click();
    const gap = page.getByRole("region", { name: "Straightedge gap, top glued" });
    await expect(gap).toContainText("Over 6 instruments");
    const own = gap.getByRole("listitem").filter({ hasText: /^Orchestra size/ });
    // 1.3 measured, and what an 8.1 mm shim 21 mm in and a break at 101 mm had foretold.
    await expect(own).toContainText(/−0\.\d\d mm/);
  });
}

/** The saddle would stand too low: the bridge is planed for it, and the outlook is as planned again. */
async function correctTheBridge(page: Page): Promise<void> {
  await expect(outlook(page)).toContainText(/the saddle will stand (3|2\.9) mm; planned 3\.4 mm/);
  await panel(page, "Corrections").click();
  await expect(page.getByText(/Not possible: The top is glued/).first()).toBeVisible();
  await page.getByRole("button", { name: "Show before and after: Bridge thickness" }).click();
  await expect(
    page.getByRole("img", { name: /^Saddle to neck end, before and after/ }),
  ).toBeVisible();
  await page.getByRole("button", { name: "Apply: Bridge thickness" }).click();
  await expect(outlook(page)).toContainText("the saddle will stand 3.4 mm; planned 3.4 mm");
  await expect(page.getByText("nothing is left to correct")).toBeVisible();
  await page.reload();
  await expect(outlook(page)).toContainText("the saddle will stand 3.4 mm");
  await panel(page, "Work").click();
}

test("a step is done out of order, reopened, and its note kept", async ({ page }) => {
  await openBench(page);
  await step(page, "Bridge").click();
  await atStep(page, "Bridge");
  await page.getByRole("textbox", { name: "Note to this step" }).fill("walnut");
  await page.getByRole("button", { name: "Done", exact: true }).click();
  await atStep(page, "Saddle");
  await step(page, "Bridge").click();
  await page.getByRole("button", { name: "Reopen this step" }).click();
  await expect(step(page, "Bridge")).not.toContainText("done");
  await page.reload();
  await expect(page.getByRole("textbox", { name: "Note to this step" })).toHaveValue("walnut");
});

test("a correction is undone, and what it set aside comes back", async ({ page }) => {
  await openBench(page);
  await step(page, "After the glue").click();
  await field(page, "Straightedge gap, top glued").fill("1.2");
  await step(page, "Bridge").click();
  await field(page, "Bridge thickness").fill("8.7");
  await panel(page, "Corrections").click();
  await page.getByRole("button", { name: "Apply these together" }).click();
  await expect(outlook(page)).toContainText("the saddle will stand 3.4 mm");
  await page.getByRole("button", { name: "Undo the last correction" }).click();
  await panel(page, "Work").click();
  await expect(field(page, "Bridge thickness")).toHaveValue("8.7");
});

test("what cannot be read stays as typed and is told of; what does not go together is blamed", async ({
  page,
}) => {
  await openBench(page);
  await step(page, "Set the shim").click();
  await field(page, "Shim used").fill("8.2x");
  await expect(field(page, "Shim used")).toHaveAttribute("aria-invalid", "true");
  await page.reload();
  await expect(field(page, "Shim used")).toHaveValue("8.2x");
  await field(page, "Shim used").fill("180");
  await expect(outlook(page)).toContainText("“Shim used” does not go with the rest.");
  await panel(page, "Corrections").click();
  await expect(page.getByText("Put the measurement named above right first")).toBeVisible();
});

test("the invented shelf says so and is taken away in one act", async ({ page }) => {
  await openBench(page);
  await panel(page, "Learning").click();
  await expect(page.getByRole("note")).toContainText(/Invented\. 5 of these .* made up/);
  const gap = page.getByRole("region", { name: "Straightedge gap, top glued" });
  await expect(gap).toContainText("an outlier: it is counted all the same");
  await expect(gap.getByRole("listitem")).toHaveCount(5);
  await page.getByRole("button", { name: "Remove the invented shelf" }).click();
  await expect(page.getByText(/^It cannot know yet: 0 instruments/)).toHaveCount(4);
  await page.reload();
  await expect(page.getByText(/^It cannot know yet: 0 instruments/)).toHaveCount(4);
});

test("what was learnt is offered and put into a plan only when asked", async ({ page }) => {
  await openBench(page);
  await panel(page, "Learning").click();
  const week = page.getByRole("region", { name: "Settling in a week under tension" });
  await expect(week.getByText(/This plan counts on 0\.00 mm/)).toBeVisible();
  await week.getByRole("button", { name: /^Count on 0\.34 mm of settling$/ }).click();
  await expect(week.getByText(/This plan counts on 0\.34 mm/)).toBeVisible();
  // The shim has grown for it: once settled the saddle stands as it was wanted.
  await expect(outlook(page)).toContainText(/the saddle will stand 3\.4 mm/);
});

test("by keyboard alone a step is measured and done", async ({ page }) => {
  await openBench(page);
  await tabTo(page, "Next");
  for (let press = 0; press < 4; press++) {
    await page.keyboard.press("Enter");
    await tabTo(page, "Next");
  }
  await atStep(page, "Set the shim");
  await tabTo(page, "Shim used", { key: "Shift+Tab" });
  await page.keyboard.type("8.2");
  await page.keyboard.press("ArrowUp");
  await expect(field(page, "Shim used")).not.toHaveValue("8.2");
  await tabTo(page, "Done");
  await page.keyboard.press("Space");
  await atStep(page, "Sand the flat to the mark");
  await expect(page.getByRole("heading", { level: 2 })).toBeFocused();
});

test("the screen's wake lock is asked for on entering, let go on leaving and while hidden", async ({
  page,
}) => {
  await page.addInitScript(() => {
    const calls: string[] = [];
    Object.assign(window, { wakeCalls: calls });
    Object.defineProperty(navigator, "wakeLock", {
      value: {
        request: async (kind: string) => {
          calls.push(`request ${kind}`);
          const lock = new EventTarget();
          return Object.assign(lock, {
            release: async () => {
              calls.push("release");
              lock.dispatchEvent(new Event("release"));
            },
          });
        },
      },
    });
  });
  const calls = (): Promise<unknown> => page.evaluate("window.wakeCalls");
  const show = (state: string): Promise<void> =>
    page.evaluate((visibility) => {
      Object.defineProperty(document, "visibilityState", { value: visibility, configurable: true });
      document.dispatchEvent(new Event("visibilitychange"));
    }, state);
  await page.goto("/");
  expect(await calls()).toEqual([]);
  await page.getByRole("link", { name: "Bench" }).click();
  await expect(page.getByText("The screen is kept awake while this view is open.")).toBeVisible();
  expect(await calls()).toEqual(["request screen"]);
  await show("hidden");
  await expect.poll(calls).toEqual(["request screen", "release"]);
  await show("visible");
  await expect.poll(calls).toEqual(["request screen", "release", "request screen"]);
  await page.getByRole("link", { name: "Layout" }).click();
  await expect.poll(calls).toEqual(["request screen", "release", "request screen", "release"]);
});

test("the whole list prints, with what is measured and lines to write on", async ({ page }) => {
  await openBench(page);
  await step(page, "After the glue").click();
  await field(page, "Straightedge gap, top glued").fill("1.23");
  const pages = readPdf(await page.pdf({ format: "A4" }));
  const text = pages.map((one) => one.text).join("");
  for (const name of stepsOf("break").map((id) => stepNames[id]))
    expect(text).toContain(name.replaceAll(" ", ""));
  expect(text).toMatch(/Straightedgegap,topglued1\.72mm±[\d.]+mm1\.23mm/);
  expect(text).not.toContain("Judgeby");
  // The page is the screen's again.
  await expect(page.getByRole("region", { name: "The whole list" })).toHaveCount(0);
  await expect(field(page, "Straightedge gap, top glued")).toBeVisible();
});

test("where the browser has no wake lock the page says so", async ({ page }) => {
  await page.addInitScript("delete Navigator.prototype.wakeLock");
  await openBench(page);
  await expect(page.getByText(/cannot keep the screen awake/)).toBeVisible();
});

test("axe finds nothing, nothing runs off and all can be touched with a glove, at any size, light or dark", async ({
  page,
}) => {
  test.slow();
  await openBench(page);
  await expectGood(page);
  await step(page, "After the glue").click();
  await field(page, "Straightedge gap, top glued").fill("1.2");
  await expectGood(page);
  for (const name of ["Corrections", "Learning", "Strings’ pull"]) {
    await panel(page, name).click();
    await expectGood(page);
  }
});

async function expectGood(page: Page): Promise<void> {
  await expectNoViolationAtAnySize(page);
  for (const size of sizes) {
    await page.setViewportSize(size);
    await expect.poll(() => tooLowForAGlove(page), `too low at ${size.width}`).toEqual([]);
  }
  expect(await page.locator("main").textContent()).not.toMatch(/NaN|Infinity|undefined|\[object/);
}

const tooLowForAGlove = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll("main button, main select, main input")]
      .map((element) => ({ box: element.getBoundingClientRect(), name: element.outerHTML }))
      .filter(({ box }) => box.height > 0 && box.height < 63.5)
      .map(({ name }) => name.slice(0, 120)),
  );
