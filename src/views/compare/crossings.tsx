import type { SweptCurve } from "../../drawing/sweep-chart.ts";
import type { TargetKind } from "../../instrument/instrument.ts";
import type { Crossing, Sweep, SweepAsked } from "../../profile/sweep.ts";
import { useRimwright } from "../store-context.ts";
import { fieldMeasure } from "./measure-of.ts";

interface Props {
  readonly curves: readonly SweptCurve[];
  readonly asked: SweepAsked;
  readonly kind: TargetKind;
}

/** In words, where each curve comes into its window and leaves it. */
export function Crossings({ curves, asked, kind }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const { say } = fieldMeasure(asked.path, kind, units);
  return (
    <ul className="crossings" aria-label="Where each meets its window">
      {curves.map(({ name, sweep }) => (
        <li key={name}>
          <strong>{name}</strong> {told(sweep, say)}
        </li>
      ))}
    </ul>
  );
}

function told({ window, crossings, points }: Sweep, say: (x: number) => string): string {
  if (window === null) return "has no window for this outcome.";
  if (crossings.length === 0) {
    const value = points.find((point) => point.value !== null)?.value ?? null;
    if (value === null) return "has no plan here.";
    return value >= window[0] && value <= window[1]
      ? "is in its window all along."
      : "is out of its window all along.";
  }
  return `${crossings.map((crossing) => crossed(crossing, say)).join(", ")}.`;
}

const crossed = ({ at, way, edge }: Crossing, say: (x: number) => string): string =>
  `${way === "enters" ? "comes into" : "leaves"} its window at ${say(at)} (its ${edge} end)`;
