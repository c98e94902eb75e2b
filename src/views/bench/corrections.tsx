import { useState } from "react";
import type { Change } from "../../instrument/as-built.ts";
import { sayPhrase } from "../../instrument/say-phrase.ts";
import { correctionOf, leftSaid, taking, untaking } from "../../profile/correction.ts";
import type { Outlook } from "../../profile/outlook.ts";
import type { RemedyId } from "../../profile/remedy.ts";
import { replaceRecord } from "../../store/as-built-edits.ts";
import { useRimwright } from "../store-context.ts";
import { BeforeAfterFigure } from "./before-after-figure.tsx";
import { today, useBenchAct } from "./bench-context.ts";
import "./corrections.css";
import { MixedRemedies } from "./mixed-remedies.tsx";
import { RemedyCard } from "./remedy-card.tsx";
import { type Looked, useOutlook, type Workpiece } from "./use-outlook.ts";

/** What can still be done about the difference between plan and outlook, each remedy with its exact amount. */
export function Corrections(piece: Workpiece) {
  const looked = useOutlook(piece);
  if (!looked.result.ok)
    return (
      <section className="corrections" aria-label="Corrections">
        <h2>Corrections</h2>
        <p>Mend the measurement named above first: until then nothing can be worked out.</p>
        <TakenList piece={piece} looked={looked} />
      </section>
    );
  return <Remedies piece={piece} looked={looked} outlook={looked.result.outlook} />;
}

interface Props {
  readonly piece: Workpiece;
  readonly looked: Looked;
}

const together = "Several remedies together";

function Remedies({ piece, looked, outlook }: Props & { readonly outlook: Outlook }) {
  const units = useRimwright((state) => state.choices.units);
  const act = useBenchAct();
  const { record, goal } = looked;
  const [chosen, setChosen] = useState<RemedyId | "together" | null>(null);
  const correction = correctionOf(outlook, record, goal);
  const figureOf = (name: string, changes: readonly Change[]) => (
    <BeforeAfterFigure name={name} before={outlook} changes={changes} />
  );
  const take = (name: string, changes: readonly Change[]): void => {
    setChosen(null);
    act((bench) =>
      replaceRecord(bench, piece.instrument.id, taking(record, outlook, name, changes, today())),
    );
  };
  return (
    <section className="corrections" aria-label="Corrections">
      <h2>Corrections</h2>
      <p className="corrections-left">{sayPhrase(leftSaid(correction), units)}</p>
      {correction.remedies.length > 0 && (
        <>
          <h3>Each alone does all of it</h3>
          <ul className="remedies">
            {correction.remedies.map((one) => (
              <RemedyCard
                key={one.ok ? one.remedy.id : one.id}
                result={one}
                figure={
                  one.ok && one.remedy.id === chosen
                    ? figureOf(one.remedy.name, one.remedy.changes)
                    : null
                }
                onDraw={setChosen}
                onTake={(remedy) => take(remedy.name, remedy.changes)}
              />
            ))}
          </ul>
          <MixedRemedies
            record={record}
            outlook={outlook}
            goal={goal}
            drawn={chosen === "together"}
            onDraw={() => setChosen(chosen === "together" ? null : "together")}
            onTake={(changes) => take(together, changes)}
          />
        </>
      )}
      <TakenList piece={piece} looked={looked} />
    </section>
  );
}

function TakenList({ piece, looked }: Props) {
  const act = useBenchAct();
  const { taken } = looked.record;
  if (taken.length === 0) return null;
  return (
    <section className="taken" aria-label="Corrections taken">
      <h3>Taken so far</h3>
      <ol>
        {taken.map(({ remedy, date }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: corrections are only added and taken off at the end.
          <li key={i}>
            {date}: {remedy}
          </li>
        ))}
      </ol>
      <p>They are in the plan now: the figures expected from here on are after them.</p>
      <button
        type="button"
        onClick={() =>
          act((bench) => replaceRecord(bench, piece.instrument.id, untaking(looked.record)))
        }
      >
        Undo the last correction
      </button>
    </section>
  );
}
