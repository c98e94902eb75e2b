import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer, { type Browser, type LaunchOptions, type Page } from "puppeteer-core";
import { findChromium, quietFlags } from "../browser/find-chromium.ts";
import type { Engine, Look, Tab } from "./engine.ts";
import { firefoxPath } from "./install.ts";

/** Chromium through its DevTools, Firefox through WebDriver BiDi: Puppeteer speaks both. */
export async function openPuppeteer(browser: "Chromium" | "Firefox", look: Look): Promise<Engine> {
  const downloads = await mkdtemp(join(tmpdir(), "rimwright-downloads-"));
  const options = browser === "Chromium" ? chromium(downloads) : firefox(downloads, look);
  const running = await puppeteer.launch(options);
  const faults: string[] = [];
  return {
    openTab: () => openTab(running, look, faults),
    faults: () => faults,
    downloads,
    close: async () => {
      await running.close();
      await rm(downloads, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

const chromium = (downloads: string): LaunchOptions => ({
  browser: "chrome",
  executablePath: findChromium(),
  args: [...quietFlags, "--no-sandbox"],
  downloadBehavior: { policy: "allow", downloadPath: downloads },
});

const firefox = (downloads: string, look: Look): LaunchOptions => ({
  browser: "firefox",
  executablePath: firefoxPath,
  extraPrefsFirefox: {
    // 0 dark, 1 light.
    "layout.css.prefers-color-scheme.content-override": look.dark ? 0 : 1,
    // 2: into the folder named, unasked.
    "browser.download.folderList": 2,
    "browser.download.dir": downloads,
    "browser.download.useDownloadDir": true,
    "browser.download.always_ask_before_handling_new_types": false,
  },
});

async function openTab(running: Browser, look: Look, faults: string[]): Promise<Tab> {
  const page = await running.newPage();
  page.on("console", (message) => {
    if (["error", "warn"].includes(message.type()))
      faults.push(`console ${message.type()}: ${message.text()}`);
  });
  page.on("pageerror", (fault) => faults.push(`uncaught: ${String(fault)}`));
  await page.evaluateOnNewDocument(() => {
    document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) =>
      console.error("against the policy:", effectiveDirective, blockedURI),
    );
  });
  await page.setViewport({ width: look.width, height: look.height });
  if (running.process()?.spawnfile.includes("firefox") === false)
    await page.emulateMediaFeatures([
      { name: "prefers-color-scheme", value: look.dark ? "dark" : "light" },
    ]);
  return tabOn(page);
}

const tabOn = (page: Page): Tab => ({
  goto: async (address) => void (await page.goto(address)),
  reload: async () => {
    await quiet(page);
    await page.reload();
  },
  run: async <Args extends unknown[], Value>(
    act: (...args: Args) => Value | Promise<Value>,
    ...args: Args
  ) => {
    await page.bringToFront();
    return (await page.evaluate(`(${act}).apply(null, ${JSON.stringify(args)})`)) as Value;
  },
  drag: async (first, ...rest) => {
    // A press falls on what was painted last: what has just been scrolled is painted first.
    await page.evaluate(
      () => new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted))),
    );
    await page.mouse.move(first.x, first.y);
    await page.mouse.down();
    for (const { x, y } of rest) await page.mouse.move(x, y);
    await page.mouse.up();
  },
  type: (text) => page.keyboard.type(text),
  press: (key) => page.keyboard.press(key),
  giveFile: async (path) => {
    const picker = await page.$("input[type=file]");
    if (picker === null) throw new Error("The page has no file picker.");
    await picker.uploadFile(path);
  },
  picture: () => page.screenshot(),
  close: async () => {
    await quiet(page);
    await page.close();
  },
});

/** Firefox tells of code that was on its way as the page was left as of an error in it. */
const quiet = (page: Page): Promise<void> => page.waitForNetworkIdle({ idleTime: 100 });
