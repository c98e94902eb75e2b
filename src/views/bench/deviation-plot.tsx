import type { Units } from "../../instrument/length.ts";
import type { Learnt } from "../../profile/learning.ts";
import { height } from "../measures.ts";

const width = 600;
const tall = 84;
const side = 14;
const line = 40;

interface Props {
  readonly learnt: Learnt;
  readonly units: Units;
}

/** Each instrument a mark on a line, none at 0; the interval of the mean a bar. What it says stands in words beside it. */
export function DeviationPlot({ learnt: { samples, interval }, units }: Props) {
  const values = samples.map(({ deviation }) => deviation);
  const ends = interval === null ? [] : [interval.low, interval.high];
  const low = Math.min(0, ...values, ...ends);
  const high = Math.max(0, ...values, ...ends);
  const room = Math.max(high - low, 0.1);
  const at = (mm: number): number => side + ((mm - low) / room) * (width - 2 * side);
  const marks = (outliers: boolean, mark: (x: number) => string): string =>
    samples
      .filter(({ outlier }) => outlier === outliers)
      .map(({ deviation }) => mark(at(deviation)))
      .join("");
  return (
    <svg className="deviations" viewBox={`0 0 ${width} ${tall}`} aria-hidden="true">
      <path className="plot-axis" d={`M${side} ${line}H${width - side}`} />
      <path className="plot-zero" d={`M${at(0)} ${line - 24}V${line + 24}`} />
      {interval !== null && (
        <path
          className="plot-interval"
          d={`M${at(interval.low)} ${line - 9}H${at(interval.high)}V${line + 9}H${at(interval.low)}Z`}
        />
      )}
      {interval !== null && (
        <path className="plot-mean" d={`M${at(interval.mean)} ${line - 16}V${line + 16}`} />
      )}
      <path className="plot-mark" d={marks(false, ring)} />
      <path className="plot-outlier" d={marks(true, cross)} />
      <text className="figure-text" x={side} y={tall - 3} fontSize={14}>
        {height(low, units)}
      </text>
      <text className="figure-text" x={width - side} y={tall - 3} fontSize={14} textAnchor="end">
        {height(high, units)}
      </text>
    </svg>
  );
}

const ring = (x: number): string => `M${x - 5.5} ${line}a5.5 5.5 0 1 0 11 0a5.5 5.5 0 1 0 -11 0Z`;

const cross = (x: number): string => `M${x - 6} ${line - 6}l12 12m0 -12l-12 12`;
