import { defineConfig } from "@playwright/test";

/** The same day in every engine; the others' figures are held against Chromium's, which goes first and once. */
export default defineConfig({
  // Not at once: what only reads this file must install nothing.
  globalSetup: "./install.ts",
  outputDir: ".output",
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  workers: 2,
  // Ten times what an idle machine needs: a busy one is no fault of the page's.
  timeout: 600_000,
  expect: { timeout: 60_000 },
  reporter: [["list"], ["../browser/closing-line.ts"]],
  projects: [
    { name: "Chromium", testMatch: "day.spec.ts", grep: /light$/ },
    { name: "Older", testMatch: "older-tablet.spec.ts" },
    { name: "Firefox", dependencies: ["Chromium"], testMatch: "day.spec.ts" },
    { name: "WebKit", dependencies: ["Chromium"], testMatch: "day.spec.ts" },
  ],
});
