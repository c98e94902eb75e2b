import type { Range } from "../../instrument/instrument.ts";

/** Where a value lies against its window: the band is the window, drawn over the middle half. */
export function Gauge({ value, window: [low, high] }: { value: number; window: Range }) {
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
