import { Gauge } from "./gauge.tsx";
import type { Link } from "./links.ts";
import { Mark } from "./standing-mark.tsx";

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
          {standing === "near" && <span className="unseen"> the edge of its window</span>}
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
