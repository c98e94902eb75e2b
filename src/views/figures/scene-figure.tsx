import "./scene.css";
import {
  type LineStyle,
  lineStrokes,
  type PathShape,
  pathClass,
  type Scene,
  type Shape,
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

function SceneShape({ shape }: { readonly shape: Shape }) {
  switch (shape.kind) {
    case "path":
      return (
        <path
          data-role={shape.role}
          className={pathClass(shape)}
          {...strokeOf(shape.line)}
          d={shape.d}
        />
      );
    case "text":
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
    case "group":
      return (
        <g data-role={shape.role}>
          {joined(shape.shapes).map((part, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: shapes have no names of their own, and none is ever moved.
            <SceneShape key={i} shape={part} />
          ))}
        </g>
      );
  }
}

/** A line type as attributes, which the page's policy allows where it forbids styles. */
export function strokeOf(line: LineStyle) {
  const { width, dashes } = lineStrokes[line];
  return { strokeWidth: width, strokeDasharray: dashes };
}

/** Neighbours of one role and one look as one path: to a browser each element is work of its own. */
function joined(shapes: readonly Shape[]): readonly Shape[] {
  const parts: Shape[] = [];
  for (const shape of shapes) {
    const last = parts.at(-1);
    if (shape.kind === "path" && last?.kind === "path" && alike(shape, last))
      parts[parts.length - 1] = { ...last, d: last.d + shape.d };
    else parts.push(shape);
  }
  return parts;
}

const alike = (a: PathShape, b: PathShape): boolean =>
  a.role === b.role && a.line === b.line && a.fill === b.fill;
