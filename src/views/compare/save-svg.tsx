import type { Scene } from "../../drawing/scene.ts";
import { svgOf } from "../../drawing/svg.ts";
import { fileName, saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";

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
