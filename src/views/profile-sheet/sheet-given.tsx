import { textWidth } from "../../drawing/lettering.ts";
import { fieldFigure, unitAfter } from "../../instrument/field-text.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { formatRadius, type Units } from "../../instrument/length.ts";
import { dimension } from "../figures/measures.ts";

/** What the shim was planned for, so that whoever finds the sheet can check it and repeat it. */
export function SheetGiven({ instrument, units }: { instrument: Instrument; units: Units }) {
  const notes = cut(instrument.notes);
  return (
    <section className="sheet-given" aria-label="Planned for">
      <dl>
        {givenOf(instrument, units).map(([name, said]) => (
          <div key={name}>
            <dt>{name}</dt> <dd>{said}</dd>
          </div>
        ))}
      </dl>
      {notes !== "" && <p dir="auto">{notes}</p>}
    </section>
  );
}

function givenOf(
  instrument: Instrument,
  units: Units,
): readonly (readonly [name: string, said: string])[] {
  const { body, dome, seat, neck, bridge, strings } = instrument;
  const say = (mm: number): string => dimension(mm, units);
  return [
    ["Dish", dome.dishRadius === null ? "none" : formatRadius(dome.dishRadius, units)],
    ["Braces", bracesSaid(dome, units)],
    ...(dome.method === "break"
      ? ([
          ["Body", `${say(body.length)} long, break ${say(dome.flatLength)} from the neck end`],
        ] as const)
      : ([
          ["Body", `${say(body.length)} long, domed all over`],
          ["Seat", `${say(seat.fingerboardWidth)} wide, plate ${say(seat.topThickness)} thick`],
        ] as const)),
    [
      "Scale",
      `${say(neck.scale)}, join at fret ${neck.joinFret}, compensation ${say(bridge.compensation)}`,
    ],
    ["Fingerboard", `${say(neck.fingerboardThickness)} thick, ${neck.lastFret} frets`],
    ["Frets", `${say(neck.fretHeight)} high`],
    ["Bridge", `${say(bridge.thickness)} thick`],
    ["Action", `${say(strings.actionBass)} bass, ${say(strings.actionTreble)} treble`],
    ...unevenSaid(instrument, say),
    ["Target", targetSaid(instrument, units)],
  ];
}

/** What of the strings is not as usual: pairs, a fan, a slant, and settling, with what is told before and after it. */
function unevenSaid(
  { neck, bridge, strings }: Instrument,
  say: (mm: number) => string,
): readonly (readonly [name: string, said: string])[] {
  return [
    ...(strings.pairGap === 0
      ? []
      : ([["Pairs", `${strings.count / 2}, ${say(strings.pairGap)} apart`]] as const)),
    ...(neck.fan === 0
      ? []
      : ([["Fan", `${say(neck.fan)}, square at fret ${neck.fanFret}`]] as const)),
    ...(bridge.slant === 0 ? [] : ([["Saddle slant", say(bridge.slant)]] as const)),
    ...(strings.settling === 0
      ? []
      : ([
          ["Settling", `${say(strings.settling)}: saddle and strings after it, fret plane before`],
        ] as const)),
  ];
}

function bracesSaid({ dishRadius, braceRadius }: Instrument["dome"], units: Units): string {
  if (braceRadius === dishRadius) return "as the dish";
  return braceRadius === null ? "straight" : formatRadius(braceRadius, units);
}

function targetSaid({ target }: Instrument, units: Units): string {
  const field = fieldAt("target.value", target.kind);
  const figure = fieldFigure(target.value, field, units);
  const unit = unitAfter(figure, field, units);
  return `${field.label.toLowerCase()} ${figure}${unit === "°" ? "" : " "}${unit}`;
}

/** px that two lines of the notes have on the sheet, and the size they are set in. */
const notesRoom = 1280;
const notesSize = 11;

/** As much of a text as two lines hold. */
function cut(text: string): string {
  const plain = text.replace(/\s+/g, " ").trim();
  if (textWidth(plain, notesSize) <= notesRoom) return plain;
  let kept = "";
  for (const character of plain) {
    if (textWidth(`${kept}${character}…`, notesSize) > notesRoom) break;
    kept += character;
  }
  return `${kept.trimEnd()}…`;
}
