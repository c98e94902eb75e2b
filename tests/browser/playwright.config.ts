import { fileURLToPath } from "node:url";
import { defineConfig } from "@playwright/test";
import { findChromium, quietFlags } from "./find-chromium.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
/** PORT lets two checkouts run side by side. */
const port = process.env["PORT"] ?? "4173";
const address = `http://localhost:${port}/`;

export default defineConfig({
  testMatch: "*.spec.ts",
  outputDir: ".output",
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  workers: 2,
  // Ten times what an idle machine needs: a busy one is no fault of the page's.
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: [["list"], ["./closing-line.ts"]],
  use: {
    baseURL: address,
    viewport: { width: 1180, height: 820 },
    screenshot: "only-on-failure",
    // The worker that serves the page offline would answer for it; its own spec lets it in.
    serviceWorkers: "block",
    launchOptions: { executablePath: findChromium(), args: quietFlags },
  },
  // The built page as a builder gets it, policy and all; `npm run browser` builds it first.
  webServer: {
    command: `npx vite preview --port ${port} --strictPort`,
    cwd: root,
    url: address,
    reuseExistingServer: false,
  },
});
