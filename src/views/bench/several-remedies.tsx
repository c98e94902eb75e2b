import type { AsBuilt, Change } from "../../instrument/as-built/as-built.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import {
  type CorrectionExtent,
  combineRemedies,
  leastDifference,
} from "../../profile/bench/correction.ts";
import type { Goal, Outlook } from "../../profile/bench/outlook.ts";
import { type RemedyId, remediesOf, remedyNames } from "../../profile/bench/remedy.ts";
import { LengthEntry } from "../fields/length-entry.tsx";
import { height } from "../figures/measures.ts";
import { useRimwright } from "../store-context.ts";
import { useShop, useShopEdit } from "../use-shop.ts";
import { BeforeAfterFigure } from "./before-after-figure.tsx";

/** How much each may take unless stated, mm at the saddle: what is least to be seen first. Common practice, no source. */
const usualShares: Readonly<Record<RemedyId, number>> = {
  shim: 1,
  spacer: 1,
  "seat-again": 0.5,
  "flat-about-break": 1,
  "flat-about-neck-end": 0.5,
  bridge: 0.3,
  "fingerboard-thickness": 0.3,
  "fingerboard-taper": 0.2,
  wedge: 0,
  "heel-tip": 1,
  "heel-shoulder": 1,
  saddle: 0.3,
};

interface Props {
  readonly record: AsBuilt;
  readonly outlook: Outlook;
  readonly goal: Goal;
  readonly extent: CorrectionExtent;
  readonly drawn: boolean;
  readonly onDraw: () => void;
  readonly onTake: (changes: readonly Change[]) => void;
}

/** Several remedies, each as far as its limit, in the order of the list. */
export function SeveralRemedies({ record, outlook, goal, extent, drawn, onDraw, onTake }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const shares = useShop((shop) => shop.shares);
  const edit = useShopEdit();
  const most = (id: RemedyId): number => shares[id] ?? usualShares[id];
  const ids = remediesOf(outlook.instrument.dome.method);
  const mix = combineRemedies(
    outlook,
    record,
    goal,
    ids.map((id) => ({ id, most: most(id) })),
    extent,
  );
  return (
    <section className="several" aria-labelledby="several-heading">
      <h3 id="several-heading">Several together, each within its limit</h3>
      <p>
        In this order, each takes of the difference at the saddle line what its limit allows; those
        not possible now are passed over. A limit of 0 leaves one out.
      </p>
      <ul className="shares">
        {ids.map((id) => (
          <li key={id}>
            <LengthEntry
              label={`${remedyNames[id]}, at most`}
              value={most(id)}
              least={0}
              most={100}
              onChange={(mm) =>
                mm !== null && edit((shop) => ({ ...shop, shares: { ...shop.shares, [id]: mm } }))
              }
            />
          </li>
        ))}
      </ul>
      <ol className="several-parts">
        {mix.parts.map(({ id, name, instruction, raise }) => (
          <li key={id}>
            <strong>{name}</strong>, {height(Math.abs(raise), units)} at the saddle:{" "}
            {sayPhrase(instruction, units)}
          </li>
        ))}
      </ol>
      <p>
        {Math.abs(mix.rest) < leastDifference
          ? "Together they do all of it."
          : `They leave ${height(Math.abs(mix.rest), units)} undone.`}
      </p>
      {drawn && (
        <BeforeAfterFigure
          name="Several remedies together"
          before={outlook}
          changes={mix.changes}
        />
      )}
      {mix.parts.length > 0 && (
        <div className="remedy-acts">
          <button type="button" aria-pressed={drawn} onClick={onDraw}>
            Show these
          </button>
          <button type="button" onClick={() => onTake(mix.changes)}>
            Apply these together
          </button>
        </div>
      )}
    </section>
  );
}
