// @vitest-environment jsdom

import DxfParser from "dxf-parser";
import svgpath from "svgpath";
import { describe, expect, test } from "vitest";
import { bracesTemplate } from "../../../src/drawing/templates/brace-template.ts";
import { dxfOf } from "../../../src/drawing/templates/dxf.ts";
import {
  halfOutlineTemplate,
  wholeOutlineTemplate,
} from "../../../src/drawing/templates/outline-template.ts";
import { saddleTemplate } from "../../../src/drawing/templates/saddle-template.ts";
import { sectionTemplate, topPolyline } from "../../../src/drawing/templates/section-template.ts";
import { gaugeTemplate } from "../../../src/drawing/templates/shim-gauge.ts";
import { sidePatternTemplate } from "../../../src/drawing/templates/side-pattern-template.ts";
import type { Template } from "../../../src/drawing/templates/template.ts";
import { templateBox } from "../../../src/drawing/templates/template.ts";
import { templateSvg } from "../../../src/drawing/templates/template-svg.ts";
import { crossArm, overlap, tilingOf } from "../../../src/drawing/templates/tiling.ts";
import { offPolyline, type Place } from "../../../src/geometry/polyline.ts";
import { cutawayPresets } from "../../../src/instrument/cutaway-presets.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { sideOf } from "../../../src/profile/side.ts";
import { topZ } from "../../../src/profile/top.ts";
import { outlinePoints } from "../../support/precise-outline.ts";
import { planned } from "../../support/solved.ts";

const inMm = (mm: number): string => `${mm.toFixed(2)} mm`;
const words = { length: inMm, radius: inMm };

function templatesOf(instrument: Instrument): readonly Template[] {
  const { givens, profile } = planned(instrument);
  const brace = { length: 385, radius: instrument.dome.braceRadius };
  const gauge = gaugeTemplate({ name: "Shim", value: profile.shim }, words);
  return [
    halfOutlineTemplate(givens, profile, words),
    sidePatternTemplate(sideOf(givens, profile), words),
    sectionTemplate(givens, profile, words),
    bracesTemplate([brace], "Top brace", words),
    ...[gauge, saddleTemplate(givens, profile)].filter((one) => one !== null),
    ...(givens.halves.length > 1 ? [wholeOutlineTemplate(givens, profile, words)] : []),
  ];
}

interface ReadLine {
  readonly layer: string;
  readonly closed: boolean;
  readonly places: readonly Place[];
}

/** dxf-parser reads the file; it shares nothing with the writer. */
function readDxf(text: string) {
  const drawing = new DxfParser().parseSync(text);
  if (drawing === null) throw new Error("not read");
  const lines = drawing.entities.flatMap((entity): ReadLine[] => {
    if (!("vertices" in entity) || !Array.isArray(entity.vertices)) return [];
    const places = entity.vertices.map(({ x, y }): Place => [x, y]);
    return [{ layer: entity.layer, closed: "shape" in entity && entity.shape === true, places }];
  });
  const texts = drawing.entities.flatMap((entity) =>
    "text" in entity && typeof entity.text === "string" ? [entity.text] : [],
  );
  return { drawing, lines, texts };
}

/** The browser's own parser reads the tags and svgpath the path data; y is turned up again, by the file's own scale. */
function readSvg(text: string): readonly ReadLine[] {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  const [, , width = 0] = (root.getAttribute("viewBox") ?? "").split(" ").map(Number);
  const stated = /^([\d.]+)mm$/.exec(root.getAttribute("width") ?? "")?.[1];
  const scale = Number(stated) / width;
  return [...root.querySelectorAll("path")].map((path) => {
    const places: Place[] = [];
    const read = svgpath(path.getAttribute("d") ?? "")
      .abs()
      .scale(scale, -scale);
    read.iterate((part) => {
      if (part[0] !== "Z") places.push([Number(part[1]), Number(part[2])]);
    });
    const layer = path.closest("g")?.id.toUpperCase() ?? "";
    return { layer, places, closed: /Z$/.test(path.getAttribute("d") ?? "") };
  });
}

const worst = (read: readonly Place[], drawn: readonly Place[]): number =>
  Math.max(
    ...read.map((place) => offPolyline(place, drawn)),
    ...drawn.map((place) => offPolyline(place, read)),
  );

const all = [...presets, ...cutawayPresets];

describe.each(all.map((instrument) => [instrument.name, instrument] as const))(
  "%s",
  (_, instrument) => {
    const templates = templatesOf(instrument);

    test("DXF and SVG, re-read, are the templates to a thousandth", () => {
      for (const template of templates) {
        const drawn = [...template.lines];
        const dxf = readDxf(dxfOf(template)).lines;
        const svg = readSvg(templateSvg(template));
        expect(dxf).toHaveLength(drawn.length);
        expect(svg).toHaveLength(drawn.length);
        // The SVG holds its lines by layer.
        const byLayer = ["cut", "mark"].flatMap((layer) =>
          drawn.filter((one) => one.layer === layer),
        );
        for (const [read, lines] of [
          [dxf, drawn],
          [svg, byLayer],
        ] as const) {
          for (const [i, line] of lines.entries()) {
            expect(read[i]?.layer).toBe(line.layer.toUpperCase());
            expect(read[i]?.closed).toBe(line.closed);
            expect(worst(read[i]?.places ?? [], line.places)).toBeLessThan(0.001);
          }
        }
      }
    });

    test("the section's gauge is the top: straight over the flat, the core's dome beyond the blend", () => {
      const { givens, profile } = planned(instrument);
      const top = topPolyline(givens, profile);
      const { breakX } = givens;
      for (const [x, y] of top) if (x >= breakX) expect(y).toBe(0);
      const domed = breakX - instrument.dome.blendLength;
      for (let x = 0; x < domed; x += 3.1)
        expect(offPolyline([x, topZ(givens, profile.dome, x)], top)).toBeLessThan(0.02);
      expect(top[0]?.[0]).toBe(0);
      expect(top.at(-1)?.[0]).toBe(instrument.body.length);
    });

    test("tiles cover the template, and neighbours share their crosses", () => {
      for (const template of templates) {
        const box = templateBox(template);
        for (const [width, height] of [
          [190, 252],
          [190, 234],
          [120, 90],
        ] as const) {
          const { tiles, columns, rows } = tilingOf(template, width, height);
          expect(tiles).toHaveLength(columns * rows);
          expect(Math.min(...tiles.map(({ left }) => left))).toBeLessThan(box.left);
          expect(Math.max(...tiles.map(({ right }) => right))).toBeGreaterThan(box.right);
          expect(Math.min(...tiles.map(({ bottom }) => bottom))).toBeLessThan(box.bottom);
          expect(Math.max(...tiles.map(({ top }) => top))).toBeGreaterThan(box.top);
          for (const a of tiles)
            for (const b of tiles) {
              if (Math.abs(a.column - b.column) + Math.abs(a.row - b.row) !== 1) continue;
              const shared = a.crosses.filter(([x, y]) =>
                b.crosses.some(([u, v]) => Math.hypot(x - u, y - v) < 1e-9),
              );
              expect(shared).toHaveLength(2);
            }
        }
      }
      expect(crossArm).toBeLessThan(overlap / 2);
    });
  },
);

// The outline's own pieces in 50 digits, by the tests' own arithmetic.
test.each(presets)(
  "the half outline of $name in both files keeps within 0.02 mm of the curve",
  (instrument) => {
    const [half] = templatesOf(instrument);
    if (half === undefined) throw new Error("no template");
    const exact = outlinePoints(instrument.body, 150);
    for (const read of [readDxf(dxfOf(half)).lines, readSvg(templateSvg(half))]) {
      const cut = read.find(({ layer }) => layer === "CUT")?.places ?? [];
      expect(Math.max(...exact.map((place) => offPolyline(place, cut)))).toBeLessThan(0.02);
    }
  },
);

test.each(cutawayPresets)(
  "the whole outline of $name in both files goes through every place traced of both halves",
  (instrument) => {
    const whole = templatesOf(instrument).at(-1);
    if (whole === undefined) throw new Error("no template");
    const { tracing = [], tracingTreble = [] } = instrument.body;
    const traced = [...tracing, ...tracingTreble.map(([x, y]): Place => [x, -y])];
    for (const read of [readDxf(dxfOf(whole)).lines, readSvg(templateSvg(whole))]) {
      const cut = read.filter(({ layer }) => layer === "CUT").flatMap(({ places }) => places);
      expect(Math.max(...traced.map((place) => offPolyline(place, cut)))).toBeLessThan(0.02);
    }
  },
);

test("the DXF is of R12, in millimetres, on named layers, with its lettering in ASCII", () => {
  const [standard] = presets;
  if (standard === undefined) throw new Error("no preset");
  const [half] = templatesOf(standard);
  if (half === undefined) throw new Error("no template");
  const labels = half.labels.map((label, i) =>
    i === 0 ? { ...label, text: "±2° – “é”\n5" } : label,
  );
  const text = dxfOf({ ...half, labels });
  const { drawing, texts } = readDxf(text);
  expect(drawing.header["$ACADVER"]).toBe("AC1009");
  expect(drawing.header["$INSUNITS"]).toBe(4);
  expect(Object.keys(drawing.tables.layer.layers)).toEqual(["CUT", "MARK", "TEXT"]);
  expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
  expect(texts[0]).toBe("?2%%d - ?e? 5");
});

/** The room each label takes, roomier than any plain face's. */
const labelBoxes = (template: Template) =>
  template.labels.map((label) => ({
    text: label.text,
    box: templateBox({ name: "", lines: [], labels: [label] }),
  }));

test.each(all)("no two names of a template of $name lie on one another", (instrument) => {
  for (const template of templatesOf(instrument)) {
    const boxes = labelBoxes(template);
    boxes.forEach(({ text, box: a }, i) => {
      for (const { text: other, box: b } of boxes.slice(i + 1)) {
        const apart =
          a.right <= b.left || b.right <= a.left || a.top <= b.bottom || b.top <= a.bottom;
        expect(apart, `${template.name}: ${text} / ${other}`).toBe(true);
      }
    });
  }
});
