import { useMemo } from "react";
import { type WhyPicture, whyPictureOf } from "../../drawing/why/why-picture.ts";
import type { StepId } from "../../instrument/as-built/steps.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { givensOf } from "../../profile/givens.ts";
import type { Profile } from "../../profile/outcome.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { useRimwright } from "../store-context.ts";

/** The picture that shows what a step's words say; steps without geometry have none. */
const pictures: Readonly<Partial<Record<StepId, WhyPicture>>> = {
  dish: "dome",
  check: "dome",
  mark: "flat",
  shim: "part",
  flat: "flat",
  spacer: "part",
  seat: "flat",
  bridge: "bridge",
  saddle: "saddle",
  strings: "saddle",
};

interface Props {
  readonly step: StepId;
  readonly instrument: Instrument;
  readonly profile: Profile;
}

export function StepPicture({ step, instrument, profile }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const which = pictures[step];
  const scene = useMemo(() => {
    const set = givensOf(instrument);
    if (which === undefined || !set.ok) return null;
    return whyPictureOf(which, set.givens, profile, measureFormat(units));
  }, [which, instrument, profile, units]);
  return scene === null ? null : (
    <figure className="step-picture">
      <SceneFigure scene={scene} />
    </figure>
  );
}
