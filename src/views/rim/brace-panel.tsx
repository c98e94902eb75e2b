import { useState } from "react";
import { braceOf } from "../../drawing/brace.ts";
import { archOf, braceFits, braceRises } from "../../profile/brace.ts";
import { braceShape, type Plate, useBraces } from "../braces.ts";
import { BraceEntries } from "../fields/brace-entries.tsx";
import { LengthEntry } from "../fields/length-entry.tsx";
import { wordsIn } from "../figures/plan-words.ts";
import { useRimwright } from "../store-context.ts";
import { type BraceRow, BraceTable } from "./brace-table.tsx";
import { RimFigure } from "./rim-figure.tsx";
import type { Rim } from "./use-rim.ts";

const plates: readonly Plate[] = ["Top", "Back"];

/** The arch of the braces of both plates, and how deep their dishes are. */
export function BracePanel({ rim: { setting } }: { readonly rim: Rim }) {
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
            <PlateBraces plate={plate} setting={setting} every={every} />
            <DishDepth plate={plate} setting={setting} />
          </div>
        ))}
      </div>
    </section>
  );
}

interface Props {
  readonly plate: Plate;
  readonly setting: Rim["setting"];
}

function PlateBraces({ plate, setting, every }: Props & { readonly every: number }) {
  const words = wordsIn(useRimwright((state) => state.choices.units));
  const [wishes] = useBraces(plate);
  const rows = wishes.map((wish, i): BraceRow => {
    const shape = braceShape(plate, wish, setting);
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
      <BraceEntries plate={plate} setting={setting} />
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
function DishDepth({ plate, setting: { instrument } }: Props) {
  const words = wordsIn(useRimwright((state) => state.choices.units));
  const [across, setAcross] = useState<number | null>(null);
  const [own, setOwn] = useState<{ readonly radius: number | null } | null>(null);
  const planned = plate === "Top" ? instrument.dome.dishRadius : instrument.body.backRadius;
  const radius = own === null ? planned : own.radius;
  const wide = across ?? instrument.dome.dishDiameter;
  return (
    <>
      <div className="length-entries">
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
