import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { findChromium } from "../browser/find-chromium.ts";

export const firefoxPath = "/usr/bin/firefox-esr";
export const webKitDriverPath = "/usr/bin/WebKitWebDriver";
export const xvfbPath = "/usr/bin/Xvfb";

const packages = [
  "firefox-esr",
  "webkit2gtk-driver",
  "gir1.2-webkit2-4.1",
  "python3-gi",
  "xvfb",
  "fonts-liberation",
];

/** What the packages bring. The type library's own folder differs by processor; its documentation's does not. */
const files = [
  firefoxPath,
  webKitDriverPath,
  "/usr/share/doc/gir1.2-webkit2-4.1",
  "/usr/lib/python3/dist-packages/gi/__init__.py",
  xvfbPath,
];

/**
 * Has Chromium, Firefox ESR and WebKitGTK there: installs them on Debian as root, elsewhere throws and says
 * what to run. A test in an engine is never skipped for want of it.
 */
export default function installEngines(): void {
  findChromium();
  const isMissing = (): boolean => files.some((file) => !existsSync(file));
  const isDebian = existsSync("/usr/bin/apt-get");
  if (isMissing() && isDebian && process.getuid?.() === 0) {
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    const apt = (...args: string[]) =>
      execFileSync("/usr/bin/apt-get", args, { stdio: "inherit", env });
    apt("update");
    apt("install", "-y", "--no-install-recommends", ...packages);
  }
  if (isMissing()) throw new Error(`Firefox ESR or WebKitGTK is missing. Run: ${remedy(isDebian)}`);
}

const remedy = (isDebian: boolean): string =>
  isDebian
    ? `sudo apt-get update && sudo apt-get install -y ${packages.join(" ")}`
    : 'docker run --rm -v "$PWD":/rimwright -w /rimwright node:20-bookworm .ci/run';
