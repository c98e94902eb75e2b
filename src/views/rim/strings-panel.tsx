import { stringsPlan } from "../../drawing/strings/strings-plan.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { SaddleFigure } from "../figures/saddle-figure.tsx";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { useRoom } from "../figures/use-room.ts";
import { useRimwright } from "../store-context.ts";
import type { Rim } from "./rim-figure.tsx";

/** The strings from nut to saddle, and the saddle across them. */
export function StringsPanel({ rim: { givens, profile } }: { readonly rim: Rim }) {
  const units = useRimwright((state) => state.choices.units);
  const [element, { width }] = useRoom({ width: 900, height: 200 });
  const scene = stringsPlan(givens, { width, words: measureFormat(units) });
  return (
    <section aria-labelledby="rim-strings">
      <h2 id="rim-strings">Strings and saddle</h2>
      <div className="rim-figure" ref={element}>
        {scene !== null && <SceneFigure scene={scene} />}
      </div>
      <SaddleFigure givens={givens} profile={profile} />
      <p>
        Heights over the bridge’s top at each string; the band is what its middle is to lie within.
        Full size: Sheet, the template Saddle.
      </p>
    </section>
  );
}
