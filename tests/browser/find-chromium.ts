import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "@playwright/test";

const aptGet = "/usr/bin/apt-get";
const aptPackages = ["chromium", "fonts-liberation"];
const windowsRoots = ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"];

const usualPlaces = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/snap/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ...windowsRoots.flatMap((root) => {
    const folder = process.env[root];
    return folder ? [join(folder, "Google/Chrome/Application/chrome.exe")] : [];
  }),
];

/** Keeps Chromium from calling home and from complaining of hardware it does not need. */
export const quietFlags = [
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/**
 * Path of a Chromium to drive: the one `CHROMIUM_PATH` names, else Playwright's own, else one in its
 * usual place, else one installed now (on Debian, as root). Throws, saying what to run, when there is
 * none: a browser test is never skipped for want of a browser.
 */
export function findChromium(): string {
  const named = process.env["CHROMIUM_PATH"];
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH is ${named}, and no such file exists.`);
  }
  const found = present() ?? (canInstall() ? install() : undefined);
  if (found) return found;
  throw new Error(`No Chromium found. Run: ${remedy()}`);
}

function present(): string | undefined {
  return [chromium.executablePath(), ...usualPlaces].find((place) => existsSync(place));
}

const canInstall = () => existsSync(aptGet) && process.getuid?.() === 0;

function install(): string | undefined {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const apt = (...args: string[]) => execFileSync(aptGet, args, { stdio: "inherit", env });
  apt("update");
  apt("install", "-y", "--no-install-recommends", ...aptPackages);
  return present();
}

function remedy(): string {
  return existsSync(aptGet)
    ? `sudo apt-get update && sudo apt-get install -y ${aptPackages.join(" ")}`
    : "npx playwright install chromium";
}
