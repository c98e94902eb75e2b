import { useMemo } from "react";
import type { Scene } from "../../drawing/scene.ts";
import { type Givens, givensOf } from "../../profile/givens.ts";
import type { BodySide, Half } from "../../profile/halves.ts";
import type { Profile } from "../../profile/outcome.ts";
import { profileOf } from "../../profile/profile.ts";
import { type Side, sideOf } from "../../profile/side.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { type Room, useRoom } from "../figures/use-room.ts";
import { usePlan } from "../use-plan.ts";

export interface Rim {
  readonly givens: Givens;
  /** With stations at the spacing asked for. */
  readonly profile: Profile;
  /** The sides unrolled that differ: the bass side, and the treble side where it does not mirror it. */
  readonly sides: readonly RimSide[];
}

export const sideNames: Readonly<Record<BodySide, string>> = {
  bass: "Bass side",
  treble: "Treble side",
};

export interface RimSide {
  readonly half: Half;
  readonly side: Side;
}

/** The rim that is drawn: of the present instrument, or of the last one that worked. */
export function useRim(spacing: number): Rim | null {
  const plan = usePlan();
  return useMemo(() => {
    if (plan === null) return null;
    const set = givensOf(plan.instrument);
    const result = profileOf(plan.instrument, { stationEvery: spacing });
    if (!set.ok || !result.ok) return null;
    const { givens } = set;
    const { profile } = result;
    const sides = givens.halves.map((half) => ({ half, side: sideOf(givens, profile, half) }));
    return { givens, profile, sides };
  }, [plan, spacing]);
}

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
