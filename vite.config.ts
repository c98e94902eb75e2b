import react from "@vitejs/plugin-react";
import { renderUnicodeCompact } from "uqr";
import type { PreviewServer } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import type { Reporter } from "vitest/node";

const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** The policy goes into built pages only: the development server needs inline scripts of its own. */
const strictPolicy = {
  name: "strict-content-security-policy",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: contentSecurityPolicy },
      injectTo: "head-prepend",
    },
  ],
} as const;

/**
 * Once visited, the page works with the network gone. A new version waits until every tab of the old
 * one is closed, so that it never changes the tool in a builder's hand.
 */
const offline = VitePWA({
  registerType: "prompt",
  injectRegister: "script-defer",
  includeAssets: ["icon.svg", "icon-180.png"],
  workbox: { globPatterns: ["**/*.{js,css,html,svg}"] },
  manifest: {
    name: "Rimwright",
    short_name: "Rimwright",
    description: "The tail shim for a domed guitar rim, and all that follows from it.",
    lang: "en",
    categories: ["utilities"],
    display: "standalone",
    background_color: "#faf8f2",
    theme_color: "#faf8f2",
    icons: [
      { src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
      { src: "icon-192.png", sizes: "192x192", type: "image/png", purpose: "any" },
      { src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
      { src: "icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
    ],
  },
});

/** `npm start -- --host`: under each address a tablet can reach, the code that a tablet can scan. */
const scannableAddress = {
  name: "scannable-address",
  configurePreviewServer(server: PreviewServer) {
    const printUrls = server.printUrls.bind(server);
    server.printUrls = () => {
      printUrls();
      for (const address of server.resolvedUrls?.network ?? [])
        server.config.logger.info(
          `\n  ${address}\n\n${renderUnicodeCompact(address, { border: 2 })}`,
        );
    };
  },
};

/** Ends a test run with its count on one plain line, for readers of logs. */
const closingLine: Reporter = {
  onTestRunEnd(modules) {
    const states = modules.flatMap((module) =>
      [...module.children.allTests()].map((test) => test.result().state),
    );
    const passed = states.filter((state) => state === "passed").length;
    process.stdout.write(`\nvitest: ${passed} passed, ${states.length - passed} failed\n`);
  },
};

/** d3-shape makes seven curves while it loads; marked as pure, those that nobody draws with are left out. */
const shapesUnused = {
  name: "d3-shape-pure",
  apply: "build",
  transform: (code: string, id: string) =>
    id.includes("/d3-shape/")
      ? {
          code: code.replaceAll("= (function custom(", "= /* @__PURE__ */ (function custom("),
          map: null,
        }
      : null,
} as const;

/** Tests that walk through thousands of instruments, files or edits, or reckon in 50 digits: half a minute each. */
const laws = [
  "tests/profile/{fuzz,high-precision}.test.ts",
  "tests/store/files/hostile.test.ts",
  "tests/store/shelf/racing-at-once.test.ts",
];

export default defineConfig({
  base: "./",
  plugins: [react(), strictPolicy, offline, scannableAddress, shapesUnused],
  // What is served is public and takes nothing in, so it may be reached by any name the shop has given.
  preview: { allowedHosts: true },
  build: {
    target: "es2023",
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    // All that the first view needs in one file: it packs smaller than the pieces the lazy views would split it into.
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ name: "first", tags: ["$initial"] }] } },
    },
  },
  test: {
    reporters: ["default", closingLine],
    // Many times what an idle machine needs: a busy one is no fault of the code's.
    testTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: "core",
          environment: "node",
          include: ["tests/{geometry,instrument,profile,drawing,worker}/**/*.test.ts"],
          exclude: laws,
          // Pure functions leave nothing behind for the next file to trip over.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: "store",
          environment: "node",
          include: ["tests/store/**/*.test.ts"],
          exclude: laws,
        },
      },
      {
        extends: true,
        // Half a minute of work takes ten on a busy machine.
        test: { name: "laws", environment: "node", include: laws, testTimeout: 600_000 },
      },
      {
        extends: true,
        test: { name: "reference", environment: "node", include: ["tests/reference/**/*.test.ts"] },
      },
      {
        extends: true,
        test: {
          name: "views",
          environment: "jsdom",
          include: ["tests/views/**/*.test.tsx"],
          setupFiles: ["tests/support/dom.ts"],
        },
      },
    ],
  },
});
