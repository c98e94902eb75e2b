import { expect, test } from "@playwright/test";
import { watch } from "./watch.ts";

test("the watch over every page sees each kind of fault", async ({ context, page, baseURL }) => {
  const faults = await watch(context, new URL(baseURL ?? "").origin);
  await page.goto("/");
  expect(faults).toEqual([]);

  await page.evaluate(() => {
    console.warn("a warning");
    console.error("an error");
    setTimeout(() => {
      throw new Error("a throw");
    });
    document.body.setAttribute("style", "color: red");
    new Image().src = "http://127.0.0.1:9/elsewhere.png";
  });
  for (const fault of [
    "console warning: a warning",
    "console error: an error",
    "uncaught: a throw",
    "policy violation: style-src",
    "policy violation: img-src",
    "off the origin: http://127.0.0.1:9/elsewhere.png",
  ]) {
    await expect.poll(() => faults.join("\n")).toContain(fault);
  }
});
