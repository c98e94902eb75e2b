import { hundredth } from "./path.ts";
import { moreLines, pathClass, type Scene, type Shape, textClass } from "./scene.ts";

/** The look of a drawing on its own: paper and ink, warm for the dome, cool for the flat. */
const style = `
  svg { background: #faf8f2; font-family: system-ui, "Noto Sans", "Liberation Sans", sans-serif; font-variant-numeric: tabular-nums; }
  path { fill: none; stroke: #1d1c1a; stroke-linejoin: round; }
  .line-none { stroke: none; }
  .line-thick { stroke-width: 1.8; }
  .line-thin { stroke-width: 0.8; }
  .line-dashed { stroke-width: 1; stroke-dasharray: 6 3; }
  .line-chain { stroke-width: 1; stroke-dasharray: 14 3 2 3; }
  .fill-paper { fill: #faf8f2; }
  .fill-ink { fill: #1d1c1a; }
  .fill-dome { fill: #c4622d; }
  .fill-flat { fill: #2f7d9e; }
  .fill-wood { fill: #ecdfc4; }
  .fill-window { fill: #bcdcc0; }
  .figure-text { fill: #1d1c1a; }
  .figure-strong { font-weight: 700; }
`;

/** For drawings that tell more lines apart than a section has. */
const moreStyle = `
  .line-dotted { stroke-width: 1.4; stroke-dasharray: 1.4 3; }
  .line-long-dashed { stroke-width: 1.1; stroke-dasharray: 16 5; }
  .line-double-chain { stroke-width: 1.1; stroke-dasharray: 14 3 2 3 2 3; }
  .line-fine-dashed { stroke-width: 1.1; stroke-dasharray: 3 2; }
  .line-dash-dotted { stroke-width: 1.4; stroke-dasharray: 6 3 1.4 3; }
`;

const drawsMore = (shape: Shape): boolean =>
  shape.kind === "group"
    ? shape.shapes.some(drawsMore)
    : shape.kind === "path" && moreLines.some((line) => line === shape.line);

/** The scene as SVG text that stands alone: one shape a line, its role named, numbers to a hundredth. */
export function svgOf({ width, height, title, shapes }: Scene): string {
  const size = `width="${hundredth(width)}" height="${hundredth(height)}" viewBox="0 0 ${hundredth(width)} ${hundredth(height)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img">`,
    `<title>${escaped(title)}</title>`,
    `<style>${style}${shapes.some(drawsMore) ? moreStyle : ""}</style>`,
    ...shapes.flatMap((shape) => linesOf(shape, "")),
    "</svg>",
    "",
  ].join("\n");
}

function linesOf(shape: Shape, indent: string): readonly string[] {
  const role = `data-role="${escaped(shape.role)}"`;
  switch (shape.kind) {
    case "path":
      return [`${indent}<path ${role} class="${pathClass(shape)}" d="${shape.d}"/>`];
    case "text": {
      const place = `x="${hundredth(shape.x)}" y="${hundredth(shape.y)}" text-anchor="${shape.anchor}"`;
      const look = `class="${textClass(shape)}" font-size="${hundredth(shape.size)}"`;
      return [`${indent}<text ${role} ${look} ${place}>${escaped(shape.text)}</text>`];
    }
    case "group": {
      const inner = shape.shapes.flatMap((part) => linesOf(part, `${indent}  `));
      return [`${indent}<g ${role}>`, ...inner, `${indent}</g>`];
    }
  }
}

const escaped = (text: string): string =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
