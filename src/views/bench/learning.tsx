import { demoShelf } from "../../instrument/as-built/demo-shelf.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { Units } from "../../instrument/length.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import {
  aimAllowingFor,
  type Learnt,
  learntFrom,
  learntKinds,
  learntNames,
  learntSaid,
} from "../../profile/bench/learning.ts";
import type { Profile } from "../../profile/outcome.ts";
import { isBegun } from "../../store/document/as-built-edits.ts";
import { setTarget, startFrom } from "../../store/document/edits.ts";
import { newId } from "../../store/document/new-id.ts";
import { undoStep } from "../../store/document/state.ts";
import { SettlingOffer } from "../fields/settling-offer.tsx";
import { angle, height } from "../figures/measures.ts";
import { addStyles } from "../late-styles.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { useShop, useShopEdit } from "../use-shop.ts";
import styles from "./learning.css?inline";
import type { Workpiece } from "./use-outlook.ts";

addStyles(styles);

const width = 600;
const tall = 84;
const side = 14;
const line = 40;

interface Props {
  readonly learnt: Learnt;
  readonly units: Units;
}

/** Each instrument a mark on a line, none at 0; the interval of the mean a bar. What it says stands in words beside it. */
function DeviationPlot({ learnt: { samples, interval }, units }: Props) {
  const values = samples.map(({ deviation }) => deviation);
  const ends = interval === null ? [] : [interval.low, interval.high];
  const low = Math.min(0, ...values, ...ends);
  const high = Math.max(0, ...values, ...ends);
  const room = Math.max(high - low, 0.1);
  const at = (mm: number): number => side + ((mm - low) / room) * (width - 2 * side);
  const marks = (outliers: boolean, mark: (x: number) => string): string =>
    samples
      .filter(({ outlier }) => outlier === outliers)
      .map(({ deviation }) => mark(at(deviation)))
      .join("");
  return (
    <svg className="deviations" viewBox={`0 0 ${width} ${tall}`} aria-hidden="true">
      <path className="plot-axis" d={`M${side} ${line}H${width - side}`} />
      <path className="plot-zero" d={`M${at(0)} ${line - 24}V${line + 24}`} />
      {interval !== null && (
        <path
          className="plot-interval"
          d={`M${at(interval.low)} ${line - 9}H${at(interval.high)}V${line + 9}H${at(interval.low)}Z`}
        />
      )}
      {interval !== null && (
        <path className="plot-mean" d={`M${at(interval.mean)} ${line - 16}V${line + 16}`} />
      )}
      <path className="plot-mark" d={marks(false, ring)} />
      <path className="plot-outlier" d={marks(true, cross)} />
      <text className="figure-text" x={side} y={tall - 3} fontSize={14}>
        {height(low, units)}
      </text>
      <text className="figure-text" x={width - side} y={tall - 3} fontSize={14} textAnchor="end">
        {height(high, units)}
      </text>
    </svg>
  );
}

const ring = (x: number): string => `M${x - 5.5} ${line}a5.5 5.5 0 1 0 11 0a5.5 5.5 0 1 0 -11 0Z`;

const cross = (x: number): string => `M${x - 6} ${line - 6}l12 12m0 -12l-12 12`;

/** How the builder's own tops differ from the geometry, and what the next plan could aim for. */
export function Learning({ instrument, profile }: Workpiece) {
  const finished = useShop((shop) => shop.finished);
  const demo = useShop((shop) => shop.demo);
  // The invented first.
  const all = demo ? [...demoShelf, ...finished] : finished;
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
  const demo = useShop((shop) => shop.demo);
  const edit = useShopEdit();
  const show = (shown: boolean): void => edit((shop) => ({ ...shop, demo: shown }));
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
      {interval !== null &&
        interval.low * interval.high > 0 &&
        (kind === "gap" ? (
          <Offer
            instrument={instrument}
            profile={profile}
            mean={interval.mean}
            invented={samples.some((sample) => sample.invented)}
          />
        ) : (
          <SettlingOffer learnt={learnt} />
        ))}
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
  const begun = useRimwright(isBegun);
  const edit = useEdit();
  const aim = aimAllowingFor(instrument, profile, mean);
  if (aim === null)
    return <p>No {anglePart[instrument.dome.method]} in reach of this plan would allow for it.</p>;
  const say = (value: number): string =>
    aim.kind === "pitch" ? angle(value) : height(value, units);
  const { value, kind } = instrument.target;
  const take = (): void =>
    edit((state) =>
      begun
        ? startFrom(
            state,
            { ...instrument, name: `${instrument.name}, the next`, target: aim },
            newId(),
          )
        : setTarget(state, kind, aim.value, undoStep("allow for what was learnt", kind)),
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
