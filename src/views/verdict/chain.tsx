import type { Range } from "../../instrument/instrument.ts";
import type { Link } from "./links.ts";
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
export function Chain({ links }: { readonly links: readonly Link[] }) {
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
