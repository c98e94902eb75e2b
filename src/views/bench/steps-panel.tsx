import { useMemo, useState } from "react";
import type { AsBuilt } from "../../instrument/as-built/as-built.ts";
import { type StepId, stepNameOf, stepsOf } from "../../instrument/as-built/steps.ts";
import { changedBy, withPlannedPart } from "../../profile/bench/made-instrument.ts";
import { orderOfWork } from "../../profile/bench/order-of-work.ts";
import { finish, unfinish } from "../../store/document/as-built-edits.ts";
import { solvedPlan } from "../../store/document/plan.ts";
import { learnFrom } from "../../store/shelf/shop.ts";
import { addStyles } from "../late-styles.ts";
import { useEdit } from "../store-context.ts";
import { useShop, useShopEdit } from "../use-shop.ts";
import { today, useRecord } from "./bench-context.ts";
import { StepCard } from "./step-card.tsx";
import styles from "./steps.css?inline";
import type { Workpiece } from "./use-outlook.ts";
import { usePrinting, WorkList } from "./work-list.tsx";

addStyles(styles);

/** The order of work: the step open, and all of them to choose from. */
export function StepsPanel({ instrument, profile }: Workpiece) {
  const { method } = instrument.dome;
  const steps = stepsOf(method);
  const chosen = useShop((shop) => shop.step);
  // The other method's step may have been open.
  const open = steps.includes(chosen) ? chosen : (steps[0] ?? chosen);
  const record = useRecord();
  const editShop = useShopEdit();
  const [arrived, setArrived] = useState(false);
  const printing = usePrinting();
  const goTo = (step: StepId): void => {
    setArrived(true);
    editShop((shop) => ({ ...shop, step }));
  };
  const corrected = useMemo(
    () => asCorrected({ instrument, profile }, record.taken),
    [instrument, profile, record.taken],
  );
  const works = useMemo(() => orderOfWork(corrected.instrument, corrected.profile), [corrected]);
  const work = works.find(({ id }) => id === open);
  return (
    <div className="work">
      {work !== undefined && (
        <StepCard
          key={work.id}
          instrument={instrument}
          profile={profile}
          work={work}
          corrected={corrected}
          arrived={arrived}
          onGoTo={goTo}
        />
      )}
      <nav className="step-list" aria-label="Steps">
        <ol>
          {steps.map((step, i) => (
            <li key={step}>
              <button
                type="button"
                aria-current={step === open ? "step" : undefined}
                onClick={() => goTo(step)}
              >
                <span className="step-number">{i + 1}</span>
                <span className="step-name">{stepNameOf(step, method)}</span>
                {record.done[step] !== undefined && (
                  <span className="step-done">
                    <span aria-hidden="true">✓</span>
                    <span className="unseen">, done</span>
                  </span>
                )}
              </button>
            </li>
          ))}
        </ol>
      </nav>
      <Finish instrument={instrument} profile={profile} />
      {printing && <WorkList instrument={instrument} profile={profile} works={works} />}
    </div>
  );
}

/** The plan with the corrections taken: its sentences and pictures are of what is to be done now. */
function asCorrected(planned: Workpiece, taken: AsBuilt["taken"]): Workpiece {
  const changes = taken.flatMap((one) => one.changes);
  if (changes.length === 0) return planned;
  const instrument = changedBy(withPlannedPart(planned.instrument, planned.profile), changes);
  const plan = solvedPlan(instrument);
  return { instrument, profile: plan.ok ? plan.profile : planned.profile };
}

function Finish({ instrument }: Workpiece) {
  const record = useRecord();
  const { finished } = record;
  const edit = useEdit();
  const editShop = useShopEdit();
  const finishToday = (): void => edit((state) => finish(state, today()));
  // Nothing says that it is finished anew when it was finished today.
  const finishAgain = (): void => {
    finishToday();
    const asBuilt = { ...record, finished: today() };
    editShop((shop) => learnFrom(shop, { instrument, asBuilt, invented: false }));
  };
  return (
    <section className="finish" aria-label="Finish">
      <p>The whole list prints with lines to write on.</p>
      <button type="button" onClick={() => window.print()}>
        Print the whole list
      </button>
      {finished === null ? (
        <>
          <p>When it is strung and you are content, put it among the instruments learnt from.</p>
          <button type="button" onClick={finishToday}>
            Finish this instrument
          </button>
        </>
      ) : (
        <>
          <p>Finished on {finished}. It is learnt from as it was that day.</p>
          <button type="button" onClick={finishAgain}>
            Learn from what was measured since
          </button>
          <button type="button" onClick={() => edit(unfinish)}>
            Open it again
          </button>
        </>
      )}
    </section>
  );
}
