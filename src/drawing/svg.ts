import { hundredth } from "./path.ts";
import {
  type LineStyle,
  lineStrokes,
  pathClass,
  type Scene,
  type Shape,
  textClass,
} from "./scene.ts";
import { xmlText } from "./xml-text.ts";

const sectionLines: readonly LineStyle[] = ["none", "thick", "thin", "dashed", "chain"];

function lineRule(line: LineStyle): string {
  const { width, dashes } = lineStrokes[line];
  const stroke = width === 0 ? "stroke: none;" : `stroke-width: ${width};`;
  const dashed = dashes === undefined ? "" : ` stroke-dasharray: ${dashes};`;
  return `  .line-${line} { ${stroke}${dashed} }`;
}

/** The look of a drawing on its own: paper and ink, warm for the dome, cool for the flat. */
const style = `
  svg { background: #faf8f2; font-family: system-ui, "Noto Sans", "Liberation Sans", sans-serif; font-variant-numeric: tabular-nums; }
  path { fill: none; stroke: #1d1c1a; stroke-linejoin: round; }
${sectionLines.map(lineRule).join("\n")}
  .fill-paper { fill: #faf8f2; }
  .fill-ink { fill: #1d1c1a; }
  .fill-dome { fill: #c4622d; }
  .fill-flat { fill: #2f7d9e; }
  .fill-wood { fill: #ecdfc4; }
  .fill-window { fill: #bcdcc0; }
  .figure-text { fill: #1d1c1a; }
  .figure-strong { font-weight: 700; }
`;

const linesIn = (shapes: readonly Shape[]): readonly LineStyle[] =>
  shapes.flatMap((shape) =>
    shape.kind === "group" ? linesIn(shape.shapes) : shape.kind === "path" ? [shape.line] : [],
  );

/** Rules for the line types that a section has not, as far as they are drawn. */
const otherLines = (shapes: readonly Shape[]): string =>
  [...new Set(linesIn(shapes))]
    .filter((line) => !sectionLines.includes(line))
    .map((line) => `${lineRule(line)}\n`)
    .join("");

/** The scene as SVG text that stands alone: one shape a line, its role named, numbers to a hundredth. */
export function svgOf({ width, height, title, shapes }: Scene): string {
  const size = `width="${hundredth(width)}" height="${hundredth(height)}" viewBox="0 0 ${hundredth(width)} ${hundredth(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img">`,
    `<title>${xmlText(title)}</title>`,
    `<style>${style}${otherLines(shapes)}</style>`,
    ...shapes.flatMap((shape) => linesOf(shape, "")),
    "</svg>",
    "",
  ].join("\n");
}

function linesOf(shape: Shape, indent: string): readonly string[] {
  const role = `data-role="${xmlText(shape.role)}"`;
  switch (shape.kind) {
    case "path":
      return [`${indent}<path ${role} class="${pathClass(shape)}" d="${shape.d}"/>`];
    case "text": {
      const place = `x="${hundredth(shape.x)}" y="${hundredth(shape.y)}" text-anchor="${shape.anchor}"`;
      const look = `class="${textClass(shape)}" font-size="${hundredth(shape.size)}"`;
      return [`${indent}<text ${role} ${look} ${place}>${xmlText(shape.text)}</text>`];
    }
    case "group": {
      const inner = shape.shapes.flatMap((part) => linesOf(part, `${indent}  `));
      return [`${indent}<g ${role}>`, ...inner, `${indent}</g>`];
    }
  }
}
