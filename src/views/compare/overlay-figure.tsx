import { useMemo } from "react";
import {
  compareLine,
  type OverlaidVariant,
  variantsOverlay,
} from "../../drawing/charts/overlay.ts";
import { givensOf } from "../../profile/givens.ts";
import { SaveSvg, SceneRoom } from "../figures/chart-figure.tsx";
import { type Compared, useCompared } from "./use-comparison.ts";

/** The sections of the base and its variants on one another. */
export function OverlayFigure() {
  const compared = useCompared();
  const variants = useMemo(() => compared.flatMap(overlaidVariant), [compared]);
  if (variants.length === 0) return null;
  return (
    <figure className="overlay">
      <div className="panel-head">
        <h2>Sections on one another</h2>
        <SaveSvg what="sections" scene={variantsOverlay({ width: 1000, height: 360, variants })} />
      </div>
      <SceneRoom
        name="overlay"
        first={{ width: 1000, height: 320 }}
        draw={(room) => variantsOverlay({ ...room, variants })}
      />
    </figure>
  );
}

function overlaidVariant(
  { name, instrument, plan }: Compared,
  i: number,
): readonly OverlaidVariant[] {
  const set = givensOf(instrument);
  return set.ok && plan.ok
    ? [{ name, line: compareLine(i), givens: set.givens, profile: plan.profile }]
    : [];
}
