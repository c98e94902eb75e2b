import { useState } from "react";
import { type BraceShape, braceOf } from "../../drawing/side/brace.ts";
import { archOf, type BraceRise, braceFits, braceRises } from "../../profile/brace.ts";
import { BraceEntries } from "../fields/brace-entries.tsx";
import { braceShape, type Plate, useBraces } from "../fields/braces.tsx";
import { LengthEntry } from "../fields/length-entry.tsx";
import { figure, measureFormat, unitName } from "../figures/measure-format.ts";
import { useRimwright } from "../store-context.ts";
import { type Rim, RimFigure } from "./rim-figure.tsx";

interface BraceRow {
  readonly key: number;
  readonly name: string;
  readonly shape: BraceShape;
  readonly rises: readonly BraceRise[];
}

interface BraceTableProps {
  readonly plate: Plate;
  readonly rows: readonly BraceRow[];
}

/** The rises of one plate's braces side by side: at each place from the middle, and at each brace's own end. */
function BraceTable({ plate, rows }: BraceTableProps) {
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

const plates: readonly Plate[] = ["Top", "Back"];

/** The arch of the braces of both plates, and how deep their dishes are. */
export function BracePanel({ rim: { givens } }: { readonly rim: Rim }) {
  const [every, setEvery] = useState(25);
  return (
    <section aria-labelledby="rim-braces">
      <h2 id="rim-braces">Braces and dishes</h2>
      <p>Full-size arcs to cut to, of the same braces, are among the templates on the Sheet.</p>
      <LengthEntry
        {...{ label: "Rises every", value: every, least: 5, most: 200 }}
        onChange={(mm) => mm !== null && setEvery(mm)}
      />
      <div className="rim-pair">
        {plates.map((plate) => (
          <div key={plate}>
            <h3>{plate}</h3>
            <PlateBraces plate={plate} givens={givens} every={every} />
            <DishDepth plate={plate} givens={givens} />
          </div>
        ))}
      </div>
    </section>
  );
}

interface BracePanelProps {
  readonly plate: Plate;
  readonly givens: Rim["givens"];
}

function PlateBraces({ plate, givens, every }: BracePanelProps & { readonly every: number }) {
  const words = measureFormat(useRimwright((state) => state.choices.units));
  const [wishes] = useBraces(plate);
  const rows = wishes.map((wish, i): BraceRow => {
    const shape = braceShape(plate, wish, givens);
    const name = wishes.length === 1 ? `${plate} brace` : `${plate} brace ${i + 1}`;
    const fits = braceFits(shape.length, shape.radius);
    return {
      key: wish.key,
      name,
      shape,
      rises: fits ? braceRises(shape.length, shape.radius, every) : [],
    };
  });
  return (
    <>
      <BraceEntries plate={plate} givens={givens} />
      {rows.map(({ key, name, shape, rises }) =>
        rises.length === 0 ? (
          <p key={key} className="rim-warn">
            {name}: a brace cannot be longer than its circle is wide.
          </p>
        ) : (
          <div key={key}>
            <RimFigure
              first={{ width: 400, height: 150 }}
              draw={(width) => braceOf(shape, rises, { width, height: 150, words })}
            />
            <p>
              {name}, {words.length(shape.length)} long, rises{" "}
              {words.length(archOf(shape.length, shape.radius))} at the middle.
            </p>
          </div>
        ),
      )}
      <BraceTable plate={plate} rows={rows.filter(({ rises }) => rises.length > 0)} />
    </>
  );
}

/** How deep the dish of this plate is over a stated diameter. */
function DishDepth({ plate, givens: { instrument } }: BracePanelProps) {
  const words = measureFormat(useRimwright((state) => state.choices.units));
  const [across, setAcross] = useState<number | null>(null);
  const [own, setOwn] = useState<{ readonly radius: number | null } | null>(null);
  const planned = plate === "Top" ? instrument.dome.dishRadius : instrument.body.backRadius;
  const radius = own === null ? planned : own.radius;
  const wide = across ?? instrument.dome.dishDiameter;
  return (
    <>
      <div className="value-entries">
        <LengthEntry
          {...{ label: `${plate} dish, radius`, value: radius, least: 100, most: 1e6 }}
          {...{ none: "flat", feet: true }}
          onChange={(mm) => setOwn({ radius: mm })}
        />
        <LengthEntry
          {...{ label: `${plate} dish, across`, value: wide, least: 100, most: 2000 }}
          onChange={setAcross}
        />
      </div>
      <p className={braceFits(wide, radius) ? undefined : "rim-warn"}>
        {braceFits(wide, radius)
          ? `A dish of this radius is ${words.length(archOf(wide, radius))} deep over ${words.length(wide)}.`
          : "A dish cannot be wider than its sphere."}
      </p>
    </>
  );
}
