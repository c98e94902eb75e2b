import type { ReactNode } from "react";
import type { Scene } from "../../drawing/scene.ts";
import { svgOf } from "../../drawing/svg.ts";
import { addStyles } from "../late-styles.ts";
import { fileName, saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";
import styles from "./charts.css?inline";
import { SceneFigure } from "./scene-figure.tsx";
import { type Room, useRoom } from "./use-room.ts";

addStyles(styles);

/** Saves a drawing as an SVG file that stands alone. */
export function SaveSvg({ scene, what }: { readonly scene: Scene; readonly what: string }) {
  const name = useRimwright((state) => state.instrument.name);
  return (
    <button
      type="button"
      className="aside"
      aria-label={`Save the ${what} as SVG`}
      onClick={() => saveFile(fileName(name, what, "svg"), "image/svg+xml", svgOf(scene))}
    >
      SVG
    </button>
  );
}

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
