import type { Instrument } from "../../instrument/instrument.ts";
import { demoShelf } from "../../instrument/record-demo.ts";
import { sayPhrase } from "../../instrument/say-phrase.ts";
import {
  aimAllowingFor,
  type Learnt,
  learntFrom,
  learntKinds,
  learntNames,
  learntSaid,
} from "../../profile/learning.ts";
import type { Profile } from "../../profile/outcome.ts";
import { learntFromOn } from "../../store/bench.ts";
import { setTarget, startFrom } from "../../store/edits.ts";
import { newId } from "../../store/new-id.ts";
import { angle, height } from "../measures.ts";
import { useAct, useRimwright } from "../store-context.ts";
import { useBench, useBenchAct } from "./bench-context.ts";
import { DeviationPlot } from "./deviation-plot.tsx";
import "./learning.css";
import type { Workpiece } from "./use-outlook.ts";

/** How the builder's own tops differ from the geometry, and what the next plan could aim for. */
export function Learning({ instrument, profile }: Workpiece) {
  const finished = useBench((bench) => bench.finished);
  const demo = useBench((bench) => bench.demo);
  const all = learntFromOn({ finished, demo });
  return (
    <section className="learning" aria-label="Learning">
      <h2>Learning from finished instruments</h2>
      <p>
        Measured less predicted, instrument by instrument. It is offered to the next plan and never
        put into one unasked.
      </p>
      <InventedShelf />
      {learntKinds.map((kind) => (
        <LearntCard
          key={kind}
          learnt={learntFrom(all, kind)}
          instrument={instrument}
          profile={profile}
        />
      ))}
    </section>
  );
}

/** Says that the shelf is invented, and takes it away in one act. */
function InventedShelf() {
  const demo = useBench((bench) => bench.demo);
  const act = useBenchAct();
  const show = (shown: boolean): void => act((bench) => ({ ...bench, demo: shown }));
  return (
    <div className="invented" role="note">
      {demo ? (
        <>
          <p>
            <strong>Invented.</strong> {demoShelf.length} of these instruments were made up, to show
            what this looks like. Nobody built them: take them away before you trust a figure here.
          </p>
          <button type="button" onClick={() => show(false)}>
            Remove the invented shelf
          </button>
        </>
      ) : (
        <button type="button" onClick={() => show(true)}>
          Show the invented shelf
        </button>
      )}
    </div>
  );
}

interface CardProps extends Workpiece {
  readonly learnt: Learnt;
}

function LearntCard({ learnt, instrument, profile }: CardProps) {
  const units = useRimwright((state) => state.choices.units);
  const { kind, samples, interval } = learnt;
  return (
    <section className="learnt" aria-labelledby={`learnt-${kind}`}>
      <h3 id={`learnt-${kind}`}>{learntNames[kind]}</h3>
      <p className="learnt-said">{sayPhrase(learntSaid(learnt), units)}</p>
      {samples.length > 0 && <DeviationPlot learnt={learnt} units={units} />}
      {samples.length > 0 && (
        <ul className="samples">
          {samples.map(({ name, invented, deviation, outlier }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two instruments may bear one name.
            <li key={i}>
              <span>
                {name}
                {invented && !/^invented/i.test(name) && " (invented)"}
                {outlier && <strong>, an outlier: it is counted all the same</strong>}
              </span>
              <span className="sample-value">{signed(deviation, (mm) => height(mm, units))}</span>
            </li>
          ))}
        </ul>
      )}
      {interval !== null && interval.low * interval.high > 0 && (
        <Offer
          instrument={instrument}
          profile={profile}
          mean={interval.mean}
          invented={samples.some((sample) => sample.invented)}
        />
      )}
    </section>
  );
}

const signed = (mm: number, say: (mm: number) => string): string =>
  `${mm < 0 ? "−" : "+"}${say(Math.abs(mm))}`;

interface OfferProps {
  readonly instrument: Instrument;
  readonly profile: Profile;
  readonly mean: number;
  readonly invented: boolean;
}

/** What the next plan would aim for, and the act that aims it. */
function Offer({ instrument, profile, mean, invented }: OfferProps) {
  const units = useRimwright((state) => state.choices.units);
  const begun = useBench((bench) => bench.records[instrument.id] !== undefined);
  const act = useAct();
  const aim = aimAllowingFor(instrument, profile, mean);
  if (aim === null) return <p>No shim in reach of this plan would allow for it.</p>;
  const say = (value: number): string =>
    aim.kind === "pitch" ? angle(value) : height(value, units);
  const { value, kind } = instrument.target;
  const take = (): void =>
    act((state) =>
      begun
        ? startFrom(
            state,
            { ...instrument, name: `${instrument.name}, the next`, target: aim },
            newId(),
          )
        : setTarget(state, kind, aim.value, "allow for what was learnt"),
    );
  return (
    <div className="offer">
      <p>
        Were it to come again, a plan that aims for {say(aim.value)} would come out at the{" "}
        {say(value)} this one aims for.
        {invented && " It rests on invented instruments in part: only to try it out."}
      </p>
      <button type="button" onClick={take}>
        {begun
          ? `Start the next plan with ${say(aim.value)}`
          : `Aim this plan for ${say(aim.value)}`}
      </button>
    </div>
  );
}
