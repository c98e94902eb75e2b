import "./verdict.css";
import { useEffect, useState } from "react";
import { fieldFigure } from "../../instrument/field-text.ts";
import type { Instrument, Range } from "../../instrument/instrument.ts";
import { formatLength, lengthFigure, nearest64, type Units } from "../../instrument/length.ts";
import { anglePart, targetFields } from "../../instrument/outcome-fields.ts";
import type { Profile } from "../../profile/outcome.ts";
import { useGoToField } from "../fields/go-to-field.ts";
import { anglePartOf } from "../figures/angle-part.ts";
import { height } from "../figures/measures.ts";
import { useRimwright } from "../store-context.ts";
import { usePlan } from "../use-plan.ts";
import { type Link, linksOf } from "./links.ts";
import { Mark } from "./standing-mark.tsx";

/** Where a value lies against its window: the band is the window, drawn over the middle half. */
function Gauge({ value, window: [low, high] }: { value: number; window: Range }) {
  const share = high > low ? (value - low) / (high - low) : 0.5;
  const x = Math.min(97, Math.max(3, 25 + 50 * share));
  return (
    <svg className="gauge" viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
      <rect className="gauge-window" x="25" y="3" width="50" height="6" />
      <path className="gauge-line" d="M0 9 H100" />
      <rect className="gauge-value" x={x - 1.25} y="0" width="2.5" height="12" />
    </svg>
  );
}

/** From cause to effect: what the shim does, to the strings. */
function Chain({ links }: { readonly links: readonly Link[] }) {
  return (
    <ol className="chain">
      {links.map((link) => (
        <li key={link.name}>
          <h3>{link.name}</h3>
          <p className="chain-value">{link.said}</p>
          {link.window !== null && <Standing window={link.window} value={link.value} />}
          <p className="chain-meaning">{link.meaning}</p>
        </li>
      ))}
    </ol>
  );
}

function Standing({ window, value }: { window: NonNullable<Link["window"]>; value: number }) {
  const { standing, said, range } = window;
  return (
    <>
      <div className="chain-stand">
        <p className={`standing standing-${standing}`}>
          <Mark of={standing} />
          {standing}
          {standing === "close" && <span className="unseen"> to the edge of its window</span>}
        </p>
        <p className="chain-window">
          <span className="unseen">Window </span>
          {said}
        </p>
      </div>
      <Gauge value={value} window={range} />
    </>
  );
}

interface Props {
  readonly instrument: Instrument;
  readonly profile: Profile;
  readonly units: Units;
}

/** The shim (or spacer), to be read across the workshop: to 0.1 mm and to the nearest 1/64 in, the builder's own unit first. */
function PartFigure({ instrument, profile, units }: Props) {
  const { name, heading, value } = anglePartOf(profile);
  const figure = (unit: string, text: string) => (
    <p key={unit} className="shim-figure" data-length={text.length}>
      {text}
      <span>{unit}</span>
    </p>
  );
  const metric = figure("mm", lengthFigure(value, { unit: "mm", decimals: 1, fixed: true }));
  const inch = figure("in", lengthFigure(value, { unit: "in", fraction: 64 }));
  return (
    <section className="shim" aria-label={name}>
      <h2>{heading}</h2>
      <div className="shim-figures">{units === "mm" ? [metric, inch] : [inch, metric]}</div>
      <TargetLine instrument={instrument} units={units} />
    </section>
  );
}

function TargetLine({ instrument: { target, dome }, units }: Pick<Props, "instrument" | "units">) {
  const goTo = useGoToField();
  const field = targetFields[target.kind];
  const value =
    field.quantity === "angle"
      ? `${fieldFigure(target.value, field, units)}°`
      : height(target.value, units);
  return (
    <button type="button" className="target-line" onClick={() => goTo("target.value")}>
      {target.kind === anglePart[dome.method]
        ? "as stated"
        : `for ${field.label.toLowerCase()} ${value}`}
    </button>
  );
}

/** A thickness in one breath. */
const sayThickness = (value: number): string =>
  `${formatLength(value, { unit: "mm", decimals: 1, fixed: true })}, ${nearest64(value)}`;

/** The answer: the shim (or spacer), and what follows from it. */
export function Verdict() {
  const units = useRimwright((state) => state.choices.units);
  const plan = usePlan();
  if (plan === null) return null;
  const { instrument, profile, refusal } = plan;
  const links = linksOf(instrument, profile, units);
  return (
    <section className="verdict" aria-label="Verdict" data-current={refusal === null}>
      <PartFigure instrument={instrument} profile={profile} units={units} />
      <Chain links={links} />
      <Spoken text={summary(profile, links, refusal !== null)} />
    </section>
  );
}

function summary(profile: Profile, links: readonly Link[], old: boolean): string {
  const { name: part, value } = anglePartOf(profile);
  const said = links
    .map(
      ({ name, said, window }) => `${name} ${said}${window === null ? "" : `, ${window.standing}`}`,
    )
    .join("; ");
  return `${old ? `The last plan that worked: ${part.toLowerCase()}` : part} ${sayThickness(value)}. ${said}.`;
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
