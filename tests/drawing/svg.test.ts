import { expect, test } from "vitest";
import type { Scene } from "../../src/drawing/scene.ts";
import { svgOf } from "../../src/drawing/svg.ts";

const scene: Scene = {
  width: 100.004,
  height: 50,
  title: 'Less < more & "quoted"',
  shapes: [
    {
      kind: "group",
      role: "shim",
      shapes: [
        { kind: "path", role: "wood", line: "thick", fill: "wood", d: "M0,0L1,1" },
        {
          kind: "text",
          role: "value",
          x: 1 / 3,
          y: 20,
          anchor: "middle",
          size: 13,
          strong: true,
          text: '1/4" & more',
        },
      ],
    },
  ],
};

test("writes one named shape a line, rounded and escaped", () => {
  const lines = svgOf(scene).split("\n");
  expect(lines[0]).toBe(
    '<svg xmlns="http://www.w3.org/2000/svg" width="100" height="50" viewBox="0 0 100 50" role="img">',
  );
  expect(lines[1]).toBe("<title>Less &lt; more &amp; &quot;quoted&quot;</title>");
  expect(lines.slice(-7)).toEqual([
    "</style>",
    '<g data-role="shim">',
    '  <path data-role="wood" class="line-thick fill-wood" d="M0,0L1,1"/>',
    '  <text data-role="value" class="figure-text figure-strong" font-size="13" x="0.33" y="20" text-anchor="middle">1/4&quot; &amp; more</text>',
    "</g>",
    "</svg>",
    "",
  ]);
});

test("styles every line and fill it names", () => {
  const svg = svgOf(scene);
  for (const name of [
    ...["none", "thick", "thin", "dashed", "chain"].map((line) => `line-${line}`),
    ...["paper", "ink", "dome", "flat", "wood", "window"].map((fill) => `fill-${fill}`),
  ])
    expect(svg).toContain(`.${name} {`);
});
