import "./scene.css";
import {
  type LineStyle,
  lineStrokes,
  type PathShape,
  pathClass,
  type Scene,
  type Shape,
  type TextShape,
  textClass,
} from "../../drawing/scene.ts";

/** A scene as SVG, at its own size. Its colours are the style sheet's. */
export function SceneFigure({
  scene: { width, height, title, shapes },
}: {
  readonly scene: Scene;
}) {
  return (
    <svg
      className="scene"
      role="img"
      aria-label={title}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      {joined(shapes).map((shape, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a scene is redrawn whole, and its order is its only identity.
        <SceneShape key={i} shape={shape} />
      ))}
    </svg>
  );
}

function SceneShape({ shape }: { readonly shape: Mark }) {
  if (shape.kind === "path")
    return (
      <path
        data-role={shape.role}
        className={pathClass(shape)}
        {...strokeOf(shape.line)}
        d={shape.d}
      />
    );
  return (
    <text
      data-role={shape.role}
      className={textClass(shape)}
      x={shape.x}
      y={shape.y}
      textAnchor={shape.anchor}
      fontSize={shape.size}
    >
      {shape.text}
    </text>
  );
}

/** A line type as attributes, which the page's policy allows where it forbids styles. */
export function strokeOf(line: LineStyle) {
  const { width, dashes } = lineStrokes[line];
  return { strokeWidth: width, strokeDasharray: dashes };
}

type Mark = PathShape | TextShape;

/**
 * What is drawn, with as few elements as show the same, for to a browser each is work of its own. Of marks
 * that cover nothing it does not show which was drawn first: of these all of one role and one look are
 * one path. One that covers is joined only to its neighbour.
 */
function joined(shapes: readonly Shape[]): readonly Mark[] {
  const parts: Mark[] = [];
  let inkFrom = 0;
  for (const mark of marksIn(shapes)) {
    const covers = coversOthers(mark);
    const like = parts.findIndex(
      (part, i) => i >= (covers ? parts.length - 1 : inkFrom) && alike(mark, part),
    );
    const part = parts[like];
    if (mark.kind === "path" && part?.kind === "path")
      parts[like] = { ...part, d: part.d + mark.d };
    else parts.push(mark);
    if (covers) inkFrom = parts.length;
  }
  return parts;
}

const marksIn = (shapes: readonly Shape[]): readonly Mark[] =>
  shapes.flatMap((shape) => (shape.kind === "group" ? marksIn(shape.shapes) : shape));

const coversOthers = (mark: Mark): boolean =>
  mark.kind === "path" && mark.fill !== undefined && mark.fill !== "ink";

const alike = (a: Mark, b: Mark): boolean =>
  a.kind === "path" &&
  b.kind === "path" &&
  a.role === b.role &&
  a.line === b.line &&
  a.fill === b.fill;
