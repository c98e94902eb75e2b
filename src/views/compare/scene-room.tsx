import type { ReactNode } from "react";
import type { Scene } from "../../drawing/scene.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { type Room, useRoom } from "../figures/use-room.ts";
import "./scene.css";

interface Props {
  /** Names the room's height in the style sheet. */
  readonly name: string;
  readonly first: Room;
  readonly draw: (room: Room) => Scene | null;
  /** What lies over the drawing and can be taken hold of. */
  readonly over?: (room: Room) => ReactNode;
}

/** A drawing made to the size of its room. */
export function SceneRoom({ name, first, draw, over }: Props) {
  const [element, room] = useRoom(first);
  const scene = draw(room);
  return (
    <div className={`scene-room ${name}-room`} ref={element}>
      {scene !== null && <SceneFigure scene={scene} />}
      {over?.(room)}
    </div>
  );
}
