import { beforeAfter } from "../../drawing/section/before-after.ts";
import type { Change } from "../../instrument/as-built/as-built.ts";
import { type MadeInstrument, madeAfter } from "../../profile/bench/made-instrument.ts";
import { height } from "../figures/measures.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { useRoom } from "../figures/use-room.ts";
import { useRimwright } from "../store-context.ts";

interface Props {
  readonly name: string;
  readonly before: MadeInstrument;
  readonly changes: readonly Change[];
}

/** The saddle's end of the section before and after a correction. */
export function BeforeAfterFigure({ name, before, changes }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const [element, room] = useRoom({ width: 700, height: 300 });
  const result = madeAfter(before, changes);
  if (!result.ok) return null;
  const scene = beforeAfter(before, result.made, { ...room, length: (mm) => height(mm, units) });
  return (
    <figure className="before-after">
      <figcaption>{name}: before and after</figcaption>
      <div className="section-room before-after-room" ref={element}>
        <SceneFigure scene={scene} />
      </div>
    </figure>
  );
}
