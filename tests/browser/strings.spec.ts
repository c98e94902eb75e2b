import { expect } from "@playwright/test";
import { expectNoViolationAtAnySize } from "./any-size.ts";
import { field, shownShim, unfoldAll } from "./layout-screen.ts";
import { test } from "./page.ts";

test("twelve strings in pairs, a slanted saddle and settling: the shim follows, and the saddle is drawn to file to", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("button", { name: "Start from…" }).click();
  await page.getByRole("button", { name: /^Twelve-string/ }).click();
  await unfoldAll(page);
  await expect(field(page, "Gap within a pair")).toHaveValue("2.4");
  const shim = await shownShim(page);
  await field(page, "Settling under tension").fill("0.5");
  await expect.poll(() => shownShim(page)).toBeGreaterThan(shim + 0.5);
  await field(page, "Saddle slant").fill("3");
  await field(page, "Fan of the frets").fill("900");
  await expect(field(page, "Fan of the frets")).toHaveAttribute("aria-invalid", "true");
  await field(page, "Fan of the frets").fill("12");
  await expectNoViolationAtAnySize(page);
  await page.goto("/#/rim");
  const saddle = page.getByRole("img", { name: /^The saddle seen from the tail/ });
  await expect(saddle).toHaveAccessibleName(/string 12 \d\.\d\d mm/);
  const said = (await saddle.getAttribute("aria-label")) ?? "";
  await expect(
    page.getByRole("img", { name: /^12 strings from saddle to nut.*fanned.*slanted/ }),
  ).toBeVisible();
  await expectNoViolationAtAnySize(page);
  await page.goto("/#/sheet");
  await expect(page.getByText(/saddle and strings after it, fret plane before/)).toBeVisible();
  await page.getByLabel("Page or template").selectOption("Saddle");
  await expect(page.getByText(/full size\.$/)).toBeVisible();
  await expect(
    page.getByText(/^String 12, bass: \d+\.\d\d mm \(0\.\d{3} in\)/).first(),
  ).toBeVisible();
  await expect(page.getByText(/taken to come down 0\.50 mm/).first()).toBeVisible();
  // The screen and the full-size template say one height of each string.
  const bass = /string 12 (\d\.\d\d mm)/.exec(said)?.[1] ?? "none";
  await expect(page.getByText(`String 12, bass: ${bass}`).first()).toBeVisible();
});
