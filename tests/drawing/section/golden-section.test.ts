import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { SectionOptions } from "../../../src/drawing/section/section-layout.ts";
import { svgOf } from "../../../src/drawing/svg.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { aimedAt } from "../../support/random-instrument.ts";
import { onSeat } from "../../support/solved.ts";
import { drawn, fractions, preset } from "./sections.ts";

/*
 * Drawings kept as readable SVG in tests/golden; open index.html there to look at them all.
 * UPDATE_GOLDEN=1 npx vitest run tests/drawing/section/golden-section.test.ts
 * writes them anew: look at every one that changed before it is committed.
 */
const folder = new URL("../../golden/", import.meta.url);
const rewrite = process.env["UPDATE_GOLDEN"] === "1";

const orchestra = preset("orchestra-size");
const seated = onSeat(orchestra);
const phone = { width: 390, height: 300 };

type Golden = readonly [name: string, instrument: Instrument, options: Partial<SectionOptions>];

const goldens: readonly Golden[] = [
  ...presets.map((instrument): Golden => [instrument.id, instrument, {}]),
  ["true-scale", orchestra, { stretch: 1 }],
  ["ten-times", orchestra, { stretch: 10 }],
  ["turned-over", orchestra, { turned: true }],
  ["turned-over-true-scale", orchestra, { turned: true, stretch: 1 }],
  ["phone", orchestra, phone],
  ["phone-in-fractions", orchestra, { ...phone, stretch: 1, words: fractions }],
  ["portrait-tablet", orchestra, { width: 820, height: 330 }],
  ["desktop", orchestra, { width: 1100, height: 520, stretch: 10 }],
  ["strings-too-high", aimedAt(orchestra, "shim", 14), {}],
  ["overrun", aimedAt(orchestra, "shim", 3), {}],
  ["overrun-turned-over", aimedAt(orchestra, "shim", 3), { turned: true, stretch: 10 }],
  ["seat", seated, {}],
  ["seat-at-work", seated, { turned: true }],
  ["seat-phone", seated, phone],
  [
    "no-dome",
    { ...orchestra, dome: { ...orchestra.dome, dishRadius: null, braceRadius: null } },
    {},
  ],
];

function compare(file: string, content: string): void {
  const place = new URL(file, folder);
  if (rewrite) writeFileSync(place, content);
  expect(readFileSync(place, "utf8")).toBe(content);
}

describe("the section is drawn as it was last looked at", () => {
  test.each(goldens)("%s", (name, instrument, options) => {
    compare(`section-${name}.svg`, svgOf(drawn(instrument, options).scene));
  });

  test("a page shows them all", () => {
    compare("index.html", pageOf(goldens.map(([name]) => name)));
  });
});

const pageOf = (names: readonly string[]): string => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <title>Golden sections</title>
  </head>
  <body>
${names.map((name) => `    <h2>${name}</h2>\n    <img src="section-${name}.svg" alt="${name}" />`).join("\n")}
  </body>
</html>
`;
