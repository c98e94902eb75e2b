import type { BraceShape } from "../../drawing/brace-template.ts";
import type { BraceRise } from "../../profile/brace.ts";
import type { Plate } from "../braces.ts";
import { figure, unitName } from "../figures/plan-words.ts";
import { useRimwright } from "../store-context.ts";

export interface BraceRow {
  readonly key: number;
  readonly name: string;
  readonly shape: BraceShape;
  readonly rises: readonly BraceRise[];
}

interface Props {
  readonly plate: Plate;
  readonly rows: readonly BraceRow[];
}

/** The rises of one plate's braces side by side: at each place from the middle, and at each brace's own end. */
export function BraceTable({ plate, rows }: Props) {
  const units = useRimwright((state) => state.choices.units);
  if (rows.length === 0) return null;
  const places = rows.flatMap(({ rises }) => rises.map(({ fromMiddle }) => fromMiddle));
  const sorted = [...new Set(places)].sort((a, b) => a - b);
  return (
    <div className="rim-table">
      <table>
        <caption>
          {plate} braces, {unitName(units)}. Both ends alike.
        </caption>
        <thead>
          <tr>
            <th scope="col" rowSpan={2}>
              From the middle
            </th>
            {rows.map(({ key, shape }, i) => (
              <th key={key} scope="colgroup" colSpan={2}>
                {rows.length > 1 && `${i + 1}: `}
                {figure(shape.length, units)} long
              </th>
            ))}
          </tr>
          <tr>
            {rows.map(({ key }) => [
              <th key={`${key} rise`} scope="col">
                Over the ends
              </th>,
              <th key={`${key} drop`} scope="col">
                Under the middle
              </th>,
            ])}
          </tr>
        </thead>
        <tbody>
          {sorted.map((place) => (
            <tr key={place}>
              <th scope="row">{figure(place, units)}</th>
              {rows.map(({ key, rises }) => {
                const here = rises.find(({ fromMiddle }) => fromMiddle === place);
                return [
                  <td key={`${key} rise`}>{here && figure(here.rise, units)}</td>,
                  <td key={`${key} drop`}>{here && figure(here.drop, units)}</td>,
                ];
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
