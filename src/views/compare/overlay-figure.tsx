import { useMemo } from "react";
import { compareLine, type Ghost, ghostScene } from "../../drawing/charts/overlay.ts";
import { settingOf } from "../../profile/setting.ts";
import { SaveSvg, SceneRoom } from "./chart-figure.tsx";
import { type Compared, useCompared } from "./use-comparison.ts";

/** The sections of the base and its variants on one another. */
export function OverlayFigure() {
  const compared = useCompared();
  const ghosts = useMemo(() => compared.flatMap(overlaidSection), [compared]);
  if (ghosts.length === 0) return null;
  return (
    <figure className="overlay">
      <div className="panel-head">
        <h2>Sections on one another</h2>
        <SaveSvg what="sections" scene={ghostScene({ width: 1000, height: 360, ghosts })} />
      </div>
      <SceneRoom
        name="overlay"
        first={{ width: 1000, height: 320 }}
        draw={(room) => ghostScene({ ...room, ghosts })}
      />
    </figure>
  );
}

function overlaidSection({ name, instrument, plan }: Compared, i: number): readonly Ghost[] {
  const set = settingOf(instrument);
  return set.ok && plan.ok
    ? [{ name, line: compareLine(i), setting: set.setting, profile: plan.profile }]
    : [];
}
