import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";
import { findChromium, quietFlags } from "./find-chromium.ts";

const publicFolder = new URL("../../public/", import.meta.url);
const paper = "#faf8f2";

/** What home screens ask for; `share` is how much of the square the drawing takes. */
const icons = [
  { name: "icon-192.png", size: 192, share: 1, background: "transparent" },
  { name: "icon-512.png", size: 512, share: 1, background: "transparent" },
  // A home screen rounds the corners itself, and paints black what is left clear.
  { name: "icon-180.png", size: 180, share: 1, background: paper },
  // W3C Web App Manifest: a circle of four fifths of the width is never cut off.
  { name: "icon-maskable-512.png", size: 512, share: 0.7, background: paper },
] as const;

/** Draws the PNG icons from the one that is drawn by hand, public/icon.svg. */
const svg = await readFile(new URL("icon.svg", publicFolder), "utf8");
const browser = await chromium.launch({ executablePath: findChromium(), args: quietFlags });
for (const { name, size, share, background } of icons) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    `<style>
      body { margin: 0; height: 100vh; display: grid; place-items: center; background: ${background}; }
      svg { width: ${share * 100}%; }
    </style>${svg}`,
  );
  await page.screenshot({
    path: fileURLToPath(new URL(name, publicFolder)),
    omitBackground: true,
  });
  await page.close();
}
await browser.close();
