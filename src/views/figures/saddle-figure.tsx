import { useMemo } from "react";
import { saddleProfile } from "../../drawing/strings/saddle-profile.ts";
import type { Givens } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { saddleCrown } from "../../profile/saddle-crown.ts";
import { useRimwright } from "../store-context.ts";
import { measureFormat } from "./measure-format.ts";
import { SceneFigure } from "./scene-figure.tsx";
import { useRoom } from "./use-room.ts";

const first = { width: 600, height: 220 };

interface Props {
  readonly givens: Givens;
  readonly profile: Pick<Profile, "dome" | "bridgeClearance">;
}

/** The saddle across the strings, to be filed to. */
export function SaddleFigure({ givens, profile }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const [element, { width }] = useRoom(first);
  const scene = useMemo(() => {
    const { windows, body } = givens.instrument;
    return saddleProfile(saddleCrown(givens, profile), {
      width: Math.min(width, first.width),
      words: measureFormat(units),
      window: windows.saddleExposure,
      leftHanded: body.leftHanded === true,
    });
  }, [givens, profile, units, width]);
  return (
    <div ref={element} className="saddle-figure">
      {scene !== null && <SceneFigure scene={scene} />}
    </div>
  );
}
