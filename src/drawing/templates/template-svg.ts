import { xmlText } from "../xml-text.ts";
import type { Template, TemplateLabel, TemplateLayer, TemplateLine } from "./template.ts";
import { templateBox } from "./template.ts";

/** mm clear round the drawing. */
const margin = 5;

const looks: Readonly<Record<TemplateLayer, string>> = {
  cut: 'stroke="#000000"',
  mark: 'stroke="#0000ff"',
};

/**
 * The template as an SVG file in true millimetres: one unit of the drawing is 1 mm, y runs down, and
 * the two layers are groups named `cut` and `mark`. Places are written to a ten-thousandth.
 */
export function templateSvg(template: Template): string {
  const { left, right, bottom, top } = templateBox(template, margin);
  const [width, height] = [number(right - left), number(top - bottom)];
  const layer = (name: TemplateLayer): readonly string[] => [
    `<g id="${name}" fill="none" ${looks[name]} stroke-width="0.2">`,
    ...template.lines
      .filter((line) => line.layer === name)
      .map((line) => `  <path data-role="${xmlText(line.role)}" d="${templatePath(line)}"/>`),
    "</g>",
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${number(left)} ${number(-top)} ${width} ${height}">`,
    `<title>${xmlText(template.name)}</title>`,
    ...layer("cut"),
    ...layer("mark"),
    '<g id="text" fill="#0000ff" font-family="sans-serif">',
    ...template.labels.map(labelTag),
    "</g>",
    "</svg>",
    "",
  ].join("\n");
}

/** A line as path data in mm, y down. */
export function templatePath({ places, closed }: TemplateLine): string {
  const d = places.map(([x, y]) => `${number(x)} ${number(-y)}`).join("L");
  return `M${d}${closed ? "Z" : ""}`;
}

function labelTag({ x, y, size, anchor, upright, text }: TemplateLabel): string {
  const place = `x="${number(x)}" y="${number(-y)}"`;
  const turn = upright ? ` transform="rotate(-90 ${number(x)} ${number(-y)})"` : "";
  return `  <text ${place}${turn} font-size="${size}" text-anchor="${anchor}">${xmlText(text)}</text>`;
}

const number = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0);
