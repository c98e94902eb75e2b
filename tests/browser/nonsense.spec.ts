import { expect, type Locator, type Page } from "@playwright/test";
import { expectDrawn, field, measurements, shownShim, unfoldAll } from "./layout-screen.ts";
import { test } from "./page.ts";

const unreadable = [
  "banana",
  "",
  "--",
  "12 mm mm",
  "1/0",
  "<b>9</b>",
  "0x1F",
  "٣",
  "9".repeat(400),
];
const unlikely = ["0", "-7", "1e9", "0.0001", "99999", "5000 ft"];

test("text that is no number is answered beside its field, in every field, and the plan stays", async ({
  page,
}) => {
  test.slow();
  await page.goto("/");
  await unfoldAll(page);
  const shim = await shownShim(page);
  const inputs = await numberFields(page);
  for (const [i, input] of inputs.entries()) {
    const good = await input.inputValue();
    await input.fill(unreadable[i % unreadable.length] ?? "");
    await expect(input).toHaveAttribute("aria-invalid", "true");
    await expect(troubleOf(page, input)).toHaveText(/\w{3}/);
    expect(await shownShim(page)).toBe(shim);
    await input.fill(good);
    await expect(input).toHaveAttribute("aria-invalid", "false");
  }
  await expectDrawn(page);
});

test("numbers no instrument has are taken or refused in every field, and nothing breaks", async ({
  page,
}) => {
  test.slow();
  await page.goto("/");
  await unfoldAll(page);
  for (const [i, input] of (await numberFields(page)).entries()) {
    const good = await input.inputValue();
    for (const text of [unlikely[i % unlikely.length], unlikely[(i + 2) % unlikely.length]]) {
      await input.fill(text ?? "");
      await expectDrawn(page);
      expect(await shownShim(page)).toBeGreaterThanOrEqual(0);
    }
    await input.fill(good);
  }
});

test("every field at once full of nonsense leaves the last good plan, and a reload keeps the texts", async ({
  page,
}) => {
  await page.goto("/");
  await unfoldAll(page);
  const shim = await shownShim(page);
  for (const input of await numberFields(page)) await input.fill("banana");
  await expectDrawn(page);
  expect(await shownShim(page)).toBe(shim);
  await expect(page.getByText("Not all you typed is in this plan")).toBeVisible();
  await page.reload();
  await expectDrawn(page);
  expect(await shownShim(page)).toBe(shim);
  await expect(field(page, "Body length")).toHaveValue("banana");
});

test("a target out of reach is refused with the range, and its nearest value can be taken", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("radio", { name: "Pitch" }).check();
  const pitch = field(page, "Pitch");
  await pitch.fill("44");
  await expect(page.getByText("This is the last plan that worked")).toBeVisible();
  const trouble = troubleOf(page, pitch);
  await expect(trouble).toHaveText(/\d/);
  await trouble.getByRole("button", { name: /^Use/ }).click();
  await expect(pitch).toHaveAttribute("aria-invalid", "false");
  await expect(page.getByText("This is the last plan that worked")).toBeHidden();
});

/** Every field that takes a number; handles that stay on their fields when texts change. */
async function numberFields(page: Page): Promise<Locator[]> {
  const inputs = measurements(page).locator("input[id^='field-']");
  const ids = await inputs.evaluateAll((all) => all.map(({ id }) => id));
  expect(ids.length).toBeGreaterThan(50);
  return ids.map((id) => page.locator(`[id="${id}"]`));
}

/** What describes a field as being wrong. */
function troubleOf(page: Page, input: Locator): Locator {
  return page.locator(".field").filter({ has: input }).locator("[id$='-trouble']");
}
