import { figure, unitName } from "../figures/plan-words.ts";
import { useRimwright } from "../store-context.ts";
import { rowsOf } from "./rim-rows.ts";
import type { Rim } from "./use-rim.ts";

/** The stations in figures, in the order of the side from the tail seam. */
export function StationTable({ rim }: { readonly rim: Rim }) {
  const units = useRimwright((state) => state.choices.units);
  return (
    <div className="rim-table">
      <table>
        <caption>
          In {unitName(units)}. What comes off, off the level rim; depth, of the finished side.
        </caption>
        <thead>
          <tr>
            <th scope="col">Along the side</th>
            <th scope="col">From the tail</th>
            <th scope="col">Half width</th>
            <th scope="col">Comes off</th>
            <th scope="col">Side depth</th>
            <th scope="col">Zone</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(rim).map(({ names, arcLength, x, halfWidth, off, sideDepth, zone }) => (
            <tr
              key={`${names.join()} ${arcLength}`}
              data-landmark={names.length > 0 ? "" : undefined}
            >
              <th scope="row">
                {figure(arcLength, units)}
                {names.map((name) => (
                  <span key={name} className="rim-landmark">
                    {name}
                  </span>
                ))}
              </th>
              <td>{figure(x, units)}</td>
              <td>{figure(halfWidth, units)}</td>
              <td>{figure(Math.max(0, off), units)}</td>
              <td>{figure(sideDepth, units)}</td>
              <td>
                <span className={`rim-zone rim-${zone}`}>{zone}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
