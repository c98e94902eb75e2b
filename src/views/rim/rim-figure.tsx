import type { Scene } from "../../drawing/scene.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { type Room, useRoom } from "../figures/use-room.ts";

interface Props {
  readonly first: Room;
  /** The drawing for so many px of width; it says itself how tall it is. */
  readonly draw: (width: number) => Scene;
}

/** A drawing as wide as its room, and as tall as it wants to be. */
export function RimFigure({ first, draw }: Props) {
  const [element, { width }] = useRoom(first);
  const scene = draw(width);
  return (
    <div className="rim-figure" ref={element}>
      <SceneFigure scene={scene} />
    </div>
  );
}
