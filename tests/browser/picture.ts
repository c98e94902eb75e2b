import { fileURLToPath } from "node:url";
import { withBuiltPage } from "./built-page.ts";

const picture = fileURLToPath(new URL("../golden/layout-screen.png", import.meta.url));

/** Takes the README's picture: the page as a first visit shows it, on a tablet. */
await withBuiltPage(async (browser, address) => {
  const page = await browser.newPage({
    viewport: { width: 1180, height: 820 },
    colorScheme: "light",
  });
  await page.goto(address, { waitUntil: "networkidle" });
  await page.screenshot({ path: picture });
});
