import type { Engine, Look } from "./engine.ts";
import { openPuppeteer } from "./puppeteer.ts";
import { openWebKit } from "./webkit.ts";

/** Opens the engine a project of the configuration is named after. */
export function openEngine(name: string, look: Look): Promise<Engine> {
  if (name === "WebKit") return openWebKit(look);
  if (name === "Chromium" || name === "Firefox") return openPuppeteer(name, look);
  throw new Error(`No engine is called ${name}.`);
}
