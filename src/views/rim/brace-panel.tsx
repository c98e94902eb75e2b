import { useState } from "react";
import { braceOf } from "../../drawing/brace.ts";
import { archOf, braceFits, braceRises } from "../../profile/brace.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { useRimwright } from "../store-context.ts";
import { figure, unitName, wordsIn } from "./measures.ts";
import { RimFigure } from "./rim-figure.tsx";
import type { Rim } from "./use-rim.ts";

interface Plate {
  readonly name: string;
  readonly radius: number | null;
}

/** The arch of the braces of both plates, and how deep their dishes are. */
export function BracePanel({ rim: { setting } }: { readonly rim: Rim }) {
  const { dome, body } = setting.instrument;
  const [every, setEvery] = useState(25);
  const plates: readonly Plate[] = [
    { name: "Top", radius: dome.braceRadius },
    { name: "Back", radius: body.backRadius },
  ];
  return (
    <section aria-labelledby="rim-braces">
      <h2 id="rim-braces">Braces and dishes</h2>
      <LengthEntry
        {...{ label: "Rises every", value: every, least: 5, most: 200 }}
        onChange={(mm) => mm !== null && setEvery(mm)}
      />
      <div className="rim-pair">
        {plates.map((plate) => (
          <PlateBraces key={plate.name} plate={plate} rim={setting} every={every} />
        ))}
      </div>
    </section>
  );
}

function PlateBraces({
  plate,
  rim,
  every,
}: {
  readonly plate: Plate;
  readonly rim: Rim["setting"];
  readonly every: number;
}) {
  const units = useRimwright((state) => state.choices.units);
  const words = wordsIn(units);
  const [length, setLength] = useState<number | null>(null);
  const [own, setOwn] = useState<number | null>(null);
  const [across, setAcross] = useState<number | null>(null);
  const long = length ?? Math.round(2 * rim.outline.widest);
  const radius = own ?? plate.radius;
  const dish = across ?? rim.instrument.dome.dishDiameter;
  const fits = braceFits(long, radius);
  const rises = fits ? braceRises(long, radius, every) : [];
  return (
    <div>
      <h3>{plate.name}</h3>
      <div className="length-entries">
        <LengthEntry
          {...{ label: `${plate.name} brace, length`, value: long, least: 20, most: 1000 }}
          onChange={setLength}
        />
        <LengthEntry
          {...{ label: `${plate.name} radius`, value: radius, least: 100, most: 1e6 }}
          {...{ none: "straight", feet: true, onChange: setOwn }}
        />
        <LengthEntry
          {...{ label: `${plate.name} dish, across`, value: dish, least: 100, most: 2000 }}
          onChange={setAcross}
        />
      </div>
      {fits ? (
        <>
          <RimFigure
            first={{ width: 400, height: 150 }}
            draw={(width) =>
              braceOf({ length: long, radius }, rises, { width, height: 150, words })
            }
          />
          <p>
            It rises {words.length(archOf(long, radius))} in the middle.{" "}
            {braceFits(dish, radius) &&
              `A dish of this radius is ${words.length(archOf(dish, radius))} deep over ${words.length(dish)}.`}
          </p>
          <div className="rim-table">
            <table>
              <caption>
                {plate.name} brace, {unitName(units)}. Both ends alike.
              </caption>
              <thead>
                <tr>
                  <th scope="col">From the middle</th>
                  <th scope="col">Rise over the ends</th>
                  <th scope="col">Under the middle</th>
                </tr>
              </thead>
              <tbody>
                {rises.map(({ fromMiddle, rise, drop }) => (
                  <tr key={fromMiddle}>
                    <th scope="row">{figure(fromMiddle, units)}</th>
                    <td>{figure(rise, units)}</td>
                    <td>{figure(drop, units)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </>
      ) : (
        <p className="rim-warn">A brace cannot be longer than its circle is wide.</p>
      )}
    </div>
  );
}
