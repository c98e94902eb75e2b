import "./scene.css";
import { pathClass, type Scene, type Shape, textClass } from "../../drawing/scene.ts";

/** A scene as SVG, at its own size. The look is the style sheet's: no style stands in the markup. */
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
      {shapes.map((shape, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a scene is redrawn whole, and its order is its only identity.
        <SceneShape key={i} shape={shape} />
      ))}
    </svg>
  );
}

function SceneShape({ shape }: { readonly shape: Shape }) {
  switch (shape.kind) {
    case "path":
      return <path data-role={shape.role} className={pathClass(shape)} d={shape.d} />;
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
          {shape.shapes.map((part, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: as above.
            <SceneShape key={i} shape={part} />
          ))}
        </g>
      );
  }
}
