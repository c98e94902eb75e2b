import type { Units } from "../../instrument/length.ts";
import type { Profile } from "../../profile/outcome.ts";
import { height } from "../measures.ts";

/** Room to write what it came to beside what was planned. */
export function SheetBlanks({ profile, units }: { profile: Profile; units: Units }) {
  const rows = [
    ["Shim used", profile.shim],
    ["Straightedge gap", profile.flatGap],
    ["Fret plane over bridge", profile.bridgeClearance],
    ["String height", profile.stringHeight],
    ["Saddle exposed", profile.saddleExposure],
  ] as const;
  return (
    <table className="sheet-blanks">
      <caption>As built</caption>
      <thead>
        <tr>
          <td />
          {rows.map(([name]) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">planned</th>
          {rows.map(([name, value]) => (
            <td key={name}>{height(value, units)}</td>
          ))}
        </tr>
        <tr className="sheet-blank">
          <th scope="row">measured</th>
          {rows.map(([name]) => (
            <td key={name} />
          ))}
        </tr>
      </tbody>
    </table>
  );
}
