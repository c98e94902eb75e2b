import { useMemo } from "react";
import { stepNameOf, stepsOf } from "../../instrument/as-built/steps.ts";
import type { DomeMethod } from "../../instrument/dome-fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import { higher, type TwoWays, twoWaysOf, type Way } from "../../profile/comparison/two-ways.ts";
import type { Profile } from "../../profile/outcome.ts";
import { leastShown } from "../../profile/standing.ts";
import { switchMethod } from "../../store/document/edits.ts";
import { methodNames } from "../fields/method-fields.tsx";
import { anglePartOf } from "../figures/angle-part.ts";
import { angle, dimension, height } from "../figures/measures.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { useNumbers } from "./use-comparison.ts";

/** The open instrument by both ways to a flat seat, asked for the same. */
export function TwoWaysPanel() {
  const instrument = useNumbers(useRimwright((state) => state.lastGood));
  const units = useRimwright((state) => state.choices.units);
  const both = useMemo(() => twoWaysOf(instrument), [instrument]);
  if (both === null) return null;
  return (
    <section className="two-ways" aria-labelledby="two-ways-heading">
      <h2 id="two-ways-heading">Two ways to a flat seat</h2>
      <div className="table-room">
        <table className="plain-table">
          <thead>
            <tr>
              <td />
              {both.ways.map((way) => (
                <th key={way.method} scope="col">
                  {methodNames[way.method].name}
                  <UseWay method={way.method} own={instrument.dome.method} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, say }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {both.ways.map((way) => (
                  <td key={way.method}>
                    {way.result.ok ? say(way.result.profile, way, units, instrument) : "–"}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {both.ways.map(({ method, result }) =>
        result.ok ? null : (
          <p key={method} className="panel-note">
            {methodNames[method].name}: {sayPhrase(result.refusal.why, units)}
          </p>
        ),
      )}
      <p className="panel-note">{costSaid(both, instrument, units)}</p>
      <p className="panel-note">{wholeRimSaid(both, units)}</p>
      <div className="two-ways-steps">
        {both.ways.map(({ method }) => (
          <section key={method} aria-label={`Steps, ${methodNames[method].name}`}>
            <h3>In this order: {methodNames[method].name.toLowerCase()}</h3>
            <ol>
              {stepsOf(method).map((id) => (
                <li key={id}>{stepNameOf(id, method)}</li>
              ))}
            </ol>
          </section>
        ))}
      </div>
    </section>
  );
}

function UseWay({ method, own }: { readonly method: DomeMethod; readonly own: DomeMethod }) {
  const edit = useEdit();
  if (method === own) return <span className="two-ways-own">in use</span>;
  return (
    <button type="button" onClick={() => edit((state) => switchMethod(state, method))}>
      Use this way
    </button>
  );
}

interface Row {
  readonly name: string;
  readonly say: (profile: Profile, way: Way, units: Units, instrument: Instrument) => string;
}

const rows: readonly Row[] = [
  {
    name: "Sets the angle",
    say: (profile, _, units) => {
      const { heading, value } = anglePartOf(profile);
      return `${heading}, ${height(value, units)}`;
    },
  },
  {
    name: "The flat is sanded",
    say: ({ seat }) =>
      seat === null ? "on the rim, before the top goes on" : "on the top, after it is glued",
  },
  {
    name: "Most off the level rim",
    say: ({ maxRemoval, maxRemovalX, rimOffset }, _, units) =>
      `${height(maxRemoval, units)}, ${dimension(maxRemovalX, units)} from the tail${
        rimOffset < leastShown ? "" : `; ${height(rimOffset, units)} of it all round`
      }`,
  },
  {
    name: "Off the plate",
    say: ({ seat }, _, units) =>
      seat === null
        ? "nothing"
        : `${height(seat.endCut, units)} at the fingerboard’s end, ${height(seat.neckEndCut, units)} at the neck end; most ${height(seat.mostCut, units)}, ${dimension(seat.mostCutX, units)} from the tail`,
  },
  {
    name: "Plate left",
    say: ({ seat }, _, units, instrument) => {
      if (seat === null) return `all of it, ${height(instrument.seat.topThickness, units)}`;
      return seat.thicknessLeft > 0 ? height(seat.thicknessLeft, units) : "none: it is cut through";
    },
  },
  { name: "Pitch", say: ({ pitch }) => angle(pitch) },
  {
    name: "Arched braces",
    say: ({ seat }) =>
      seat === null
        ? "those tailward of the break; flat above it"
        : "all of them, the upper transverse brace too",
  },
  {
    name: "Put right after the glue",
    say: ({ seat }) =>
      seat === null
        ? "at neck, bridge and saddle only"
        : "the seat too, until the fingerboard is on and as far as the plate allows",
  },
  {
    name: "A tenth of a millimetre more of it",
    say: (_, { perTenth }, units) =>
      perTenth === null ? "gives no plan" : `raises the saddle ${height(perTenth, units)}`,
  },
];

/** What the seat costs of the plate, and what changes that. */
function costSaid(
  { ways, cutHigher }: TwoWays,
  { seat: stated }: Instrument,
  units: Units,
): string {
  const result = ways.find(({ method }) => method === "seat")?.result;
  const seat = result?.ok === true ? result.profile.seat : null;
  if (seat === null) return "";
  const cost = `For the same saddle the seat takes ${height(seat.mostCut, units)} of a plate ${height(stated.topThickness, units)} thick, where the flat on the rim takes none of it.`;
  const raised =
    cutHigher === null
      ? ""
      : ` With the strings ${height(higher, units)} higher it would take ${height(cutHigher, units)}.`;
  return `${cost}${raised} However the dish is tilted the cut stays the same: only the pitch follows it.`;
}

/** Whether it does harm to dish the whole rim before the flat is sanded, as some do. */
function wholeRimSaid({ ways, dishedNeckEnd }: TwoWays, units: Units): string {
  const result = ways.find(({ method }) => method === "break")?.result;
  if (result?.ok !== true || result.profile.seat !== null) return "";
  const { dishUndercut, dishUndercutX } = result.profile;
  const habit = "Dishing the whole rim before the flat is sanded";
  if (dishUndercut === null)
    return `${habit} cannot be done with this dish: it ends short of the neck.`;
  return dishUndercutX === null
    ? `${habit} does no harm here: nowhere neckward of the break does the dish reach under the flat${
        dishedNeckEnd === null
          ? ""
          : `, and at the neck end it leaves ${height(dishedNeckEnd, units)} for the board to take off`
      }.`
    : `${habit} does harm here: it would cut ${height(dishUndercut, units)} under the flat, deepest ${dimension(dishUndercutX, units)} from the tail.`;
}
