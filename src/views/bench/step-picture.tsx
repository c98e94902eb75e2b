import { useMemo } from "react";
import { type StillPicture, whyPictureOf } from "../../drawing/why/why-picture.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import { givensOf } from "../../profile/givens.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { useRimwright } from "../store-context.ts";
import type { Workpiece } from "./use-outlook.ts";

/** The picture that shows what a step's words say. */
const pictures: Readonly<Record<StepId, StillPicture>> = {
  level: "level",
  mark: "mark",
  dish: "dish",
  check: "dish",
  shim: "board",
  flat: "board",
  overrun: "board",
  offer: "straightedge",
  top: "top",
  spacer: "board",
  seat: "angle",
  gap: "straightedge",
  fingerboard: "bridge",
  bridge: "bridge",
  saddle: "saddle",
  strings: "saddle",
  week: "saddle",
  year: "saddle",
};

interface Props extends Workpiece {
  readonly step: StepId;
}

export function StepPicture({ step, instrument, profile }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const which = pictures[step];
  const scene = useMemo(() => {
    const set = givensOf(instrument);
    if (!set.ok) return null;
    return whyPictureOf(which, set.givens, profile, measureFormat(units));
  }, [which, instrument, profile, units]);
  return scene === null ? null : (
    <figure className="step-picture">
      <SceneFigure scene={scene} />
    </figure>
  );
}
