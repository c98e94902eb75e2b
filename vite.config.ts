import { createHash } from "node:crypto";
import { appendFileSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { renderUnicodeCompact } from "uqr";
import type { PreviewServer } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import type { Reporter } from "vitest/node";

const dist = fileURLToPath(new URL("dist", import.meta.url));
const licences = "licences.md";

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

/** A file's digest as `integrity` wants it (Subresource Integrity). */
const digestOf = (file: string): string =>
  `sha384-${createHash("sha384").update(readFileSync(file)).digest("base64")}`;

/**
 * Once visited, the page works with the network gone. Each file is kept under its own digest, and only
 * if what came has that digest: a hotel's sign-in page or half a file is refused, and with it the whole
 * new copy, until all of it has come. A new version waits until it is wanted or every tab of the old
 * one is closed, so that it never changes the tool in a builder's hand. A first visit's tab is served
 * by its copy as soon as there is one, so that it can still open its views after the site has changed.
 */
const offline = VitePWA({
  registerType: "prompt",
  injectRegister: null,
  manifest: false,
  workbox: {
    globPatterns: ["**/*.{js,css,html,svg,png,webmanifest}"],
    inlineWorkboxRuntime: true,
    clientsClaim: true,
    manifestTransforms: [
      async (entries) => ({
        manifest: entries.map((entry) => {
          const integrity = digestOf(join(dist, entry.url));
          return { ...entry, revision: integrity, integrity };
        }),
      }),
    ],
  },
});

/** The licences of all that is in `dist`: Vite writes those of the page's libraries, this adds the offline worker's. */
const workerLicence = {
  name: "worker-licence",
  apply: "build",
  writeBundle: () =>
    appendFileSync(
      join(dist, licences),
      `\n## workbox (MIT)\n\n${readFileSync("node_modules/workbox-precaching/LICENSE", "utf8")}`,
    ),
} as const;

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

/** d3-shape makes eight curves while it loads; marked as pure, those that nobody draws with are left out. */
const shapesUnused = {
  name: "d3-shape-pure",
  apply: "build",
  transform: (code: string, id: string) =>
    id.includes("/d3-shape/")
      ? {
          code: code
            .replaceAll("= (function custom(", "= /* @__PURE__ */ (function custom(")
            .replace("= curveRadial(", "= /* @__PURE__ */ curveRadial("),
          map: null,
        }
      : null,
} as const;

/** Late code brings its styles with it and nothing is fetched ahead of need, so that the bundler's helper for both does nothing. */
const plainImports = {
  name: "plain-late-imports",
  apply: "build",
  enforce: "pre",
  load: (id: string) =>
    id === "\0vite/preload-helper.js" ? "export const __vitePreload = (load) => load();" : null,
} as const;

/** Tests that walk through thousands of instruments, drawings, files or edits, or reckon in 50 digits: 2 to 30 s each. */
const laws = [
  "tests/profile/{fuzz,halves-solid,high-precision,reachable,rim-extremes,seat-high-precision,seat-laws,seat-solid,solid,targets}.test.ts",
  "tests/profile/comparison/sensitivity.test.ts",
  "tests/profile/sticks/shared-shim.test.ts",
  "tests/profile/uncertainty/uncertainty.test.ts",
  "tests/profile/bench/{correction,correction-solid}.test.ts",
  "tests/drawing/section/section-lettering.test.ts",
  "tests/drawing/templates/{templates,template-files}.test.ts",
  "tests/drawing/plan/rim-plan.test.ts",
  "tests/store/document/field-view.test.ts",
  "tests/store/files/{hostile,kept-mutants,round-trip,schema-mutants}.test.ts",
  "tests/store/shelf/{racing,racing-at-once}.test.ts",
];

export default defineConfig({
  base: "./",
  plugins: [
    react(),
    plainImports,
    strictPolicy,
    workerLicence,
    offline,
    scannableAddress,
    shapesUnused,
  ],
  // What is served is public and takes nothing in, so it may be reached by any name the shop has given.
  preview: { allowedHosts: true },
  build: {
    // What README promises; older ones are told so.
    target: ["safari16.4", "firefox128", "chrome111", "edge111"],
    // One style sheet, and nothing fetched ahead: a late part is then one kind of file, and can be asked for again.
    cssCodeSplit: false,
    modulePreload: false,
    license: { fileName: licences },
    assetsInlineLimit: 0,
    // All that the first view needs is one file. What several late parts share is one file for each layer of
    // rooms: they pack smaller than the seventy pieces it would be split into, and layers import downward only.
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [
            { name: "first", tags: ["$initial"] },
            { name: "shown", test: /src.(views|drawing)/, minShareCount: 2 },
            { name: "kept", test: /src.store/, minShareCount: 2 },
            {
              name: "reckoned",
              test: /src.(worker|profile|instrument|geometry)/,
              minShareCount: 2,
            },
          ],
        },
      },
    },
  },
  test: {
    reporters: ["default", closingLine],
    // Many times what an idle machine needs: a busy one is no fault of the code's.
    testTimeout: 60_000,
    // One core is not kept free for vitest itself, which has little to do.
    maxWorkers: "100%",
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
          // Each test opens a database of a name of its own.
          isolate: false,
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
          // jsdom and the page's modules take longer to load than most files to run: dom.ts puts back what a file changes.
          isolate: false,
        },
      },
    ],
  },
});
