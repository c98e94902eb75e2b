import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "@playwright/test";
import { build, preview } from "vite";
import { findChromium, quietFlags } from "./find-chromium.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Builds the page, serves it, and hands `use` a browser and the page's address; both are closed after. */
export async function withBuiltPage<T>(
  use: (browser: Browser, address: string) => Promise<T>,
): Promise<T> {
  await build({ root, logLevel: "warn" });
  const server = await preview({ root, logLevel: "warn", preview: { port: 4174 } });
  const browser = await chromium.launch({ executablePath: findChromium(), args: quietFlags });
  try {
    const address = server.resolvedUrls?.local[0];
    if (address === undefined) throw new Error("The preview server has no local address.");
    return await use(browser, address);
  } finally {
    await browser.close();
    await server.close();
  }
}
