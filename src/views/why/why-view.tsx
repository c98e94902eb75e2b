import { useMemo } from "react";
import { whyPictureOf, whyPictures } from "../../drawing/why/why-picture.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { givensOf } from "../../profile/givens.ts";
import { anglePartOf } from "../figures/angle-part.ts";
import { measureFormat } from "../figures/measure-format.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { addStyles } from "../late-styles.ts";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import styles from "./why.css?inline";
import { whySentence } from "./why-sentences.ts";

addStyles(styles);

/** Why the shim, or the spacer, decides: five still pictures of the open instrument, one thought each. */
export function WhyView() {
  const plan = usePlan();
  const units = useRimwright((state) => state.choices.units);
  const pictures = useMemo(() => {
    const set = plan === null ? null : givensOf(plan.instrument);
    if (plan === null || set?.ok !== true) return [];
    const { instrument, profile } = plan;
    return whyPictures.map((which) => ({
      which,
      scene: whyPictureOf(which, set.givens, profile, measureFormat(units)),
      says: sayPhrase(whySentence(which, instrument, profile), units),
    }));
  }, [plan, units]);
  if (plan === null) return null;
  const part = anglePartOf(plan.profile).name.toLowerCase();
  return (
    <main className="why-view">
      <h2>Why the {part} decides</h2>
      <p className="why-name" dir="auto">
        {plan.instrument.name}
      </p>
      <ol>
        {pictures.map(({ which, scene, says }) => (
          <li key={which}>
            <SceneFigure scene={scene} />
            <p>{says}</p>
          </li>
        ))}
      </ol>
      <button type="button" onClick={() => window.print()}>
        Print on one page
      </button>
    </main>
  );
}
