import { useEffect, useState } from "react";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import { Chain } from "./chain.tsx";
import { type Link, linksOf } from "./links.ts";
import { ShimFigure, sayShim } from "./shim-figure.tsx";
import "./verdict.css";

/** The answer: the shim, and what follows from it. */
export function Verdict() {
  const units = useRimwright((state) => state.choices.units);
  const plan = usePlan();
  if (plan === null) return null;
  const { instrument, profile, refusal } = plan;
  const links = linksOf(instrument, profile, units);
  return (
    <section className="verdict" aria-label="Verdict" data-current={refusal === null}>
      <ShimFigure instrument={instrument} shim={profile.shim} units={units} />
      <Chain links={links} />
      <Spoken text={summary(profile.shim, links, refusal !== null)} />
    </section>
  );
}

function summary(shim: number, links: readonly Link[], old: boolean): string {
  const said = links
    .map(
      ({ name, said, window }) => `${name} ${said}${window === null ? "" : `, ${window.standing}`}`,
    )
    .join("; ");
  return `${old ? "The last plan that worked: shim" : "Shim"} ${sayShim(shim)}. ${said}.`;
}

/** Read out when the numbers have come to rest, so that typing is not talked over. */
function Spoken({ text }: { readonly text: string }) {
  const [rested, setRested] = useState("");
  useEffect(() => {
    const rest = setTimeout(() => setRested(text), 800);
    return () => clearTimeout(rest);
  }, [text]);
  return (
    <p className="unseen" aria-live="polite">
      {rested}
    </p>
  );
}
