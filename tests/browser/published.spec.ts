import { fileURLToPath, pathToFileURL } from "node:url";
import { expect, test } from "@playwright/test";
import { hostOf } from "./host.ts";
import { drawing, expectDrawn, shownShim } from "./layout-screen.ts";
import { watch } from "./watch.ts";

const builtPage = fileURLToPath(new URL("../../dist/index.html", import.meta.url));

test.describe("published under a folder of a host", () => {
  test.use({ serviceWorkers: "allow" });

  test("every view opens, and opens again with the host gone", async ({
    page,
    context,
    baseURL,
  }) => {
    const host = await hostOf(baseURL ?? "", "/shop/rimwright/");
    try {
      const faults = await watch(context, new URL(host.address).origin);
      await page.goto(host.address);
      await page.evaluate(async () => {
        await navigator.serviceWorker.ready;
      });
      await page.reload();
      const shim = await shownShim(page);
      for (const gone of [false, true]) {
        if (gone) await host.stop();
        await page.goto(`${host.address}#/layout`);
        await page.reload();
        await expectDrawn(page);
        expect(await shownShim(page)).toBe(shim);
        for (const name of ["Compare", "Rim", "Bench", "Sheet", "Shelf"]) {
          await page.getByRole("link", { name, exact: true }).click();
          await expect(page.locator("main")).toBeVisible();
        }
      }
      expect(faults).toEqual([]);
    } finally {
      await host.stop();
    }
  });
});

test("the manifest names icons that are there, each of the size it says", async ({
  page,
  request,
}) => {
  const manifest = await (await request.get("./manifest.webmanifest")).json();
  expect(manifest).toMatchObject({ name: "Rimwright", display: "standalone", start_url: "./" });
  await page.goto("./");
  const touchIcon = await page.locator("link[rel=apple-touch-icon]").getAttribute("href");
  const pictures: readonly { src: string; sizes: string }[] = [
    ...manifest.icons.filter(({ type }: { type: string }) => type === "image/png"),
    { src: touchIcon, sizes: "180x180" },
  ];
  expect(pictures).toHaveLength(4);
  for (const { src, sizes } of pictures) {
    const size = await page.evaluate(async (address) => {
      const picture = new Image();
      picture.src = address;
      await picture.decode();
      return `${picture.naturalWidth}x${picture.naturalHeight}`;
    }, src);
    expect(size, src).toBe(sizes);
  }
});

test("opened as a file it says in one sentence that it cannot start, and what to do", async ({
  page,
}) => {
  await page.goto(pathToFileURL(builtPage).href);
  await expect(page.getByText("Rimwright has not started.")).toBeVisible();
  await expect(page.getByText("npm start")).toBeVisible();
});

test("a script that does not come leaves the same sentence instead of an empty page", async ({
  page,
}) => {
  await page.route("**/assets/*.js", (route) => route.abort());
  await page.goto("./");
  const sentence = page.getByText("Rimwright has not started.");
  await expect(sentence).toBeHidden();
  // It waits ten seconds for the script.
  await sentence.evaluate((shown) => {
    for (const animation of shown.getAnimations()) animation.finish();
  });
  await expect(sentence).toBeVisible();
  await expect(drawing(page)).toHaveCount(0);
});
