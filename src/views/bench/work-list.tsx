import { useEffect, useState } from "react";
import { flushSync } from "react-dom";
import {
  type MeasurementKey,
  measurementField,
  measurementsAt,
} from "../../instrument/as-built/measurement-fields.ts";
import { stepNameOf } from "../../instrument/as-built/steps.ts";
import { type Phrase, sayPhrase } from "../../instrument/phrase.ts";
import { expectedOf } from "../../profile/bench/expected.ts";
import type { WorkStep } from "../../profile/bench/work-step.ts";
import { height } from "../figures/measures.ts";
import { addStyles } from "../late-styles.ts";
import { useRimwright } from "../store-context.ts";
import { useRecord } from "./bench-context.ts";
import type { Workpiece } from "./use-outlook.ts";
import styles from "./work-list.css?inline";

addStyles(styles);

/** Whether the page is being printed: what is only on paper is made no sooner. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // At once: the browser takes the page as it stands when the event is over.
    const before = (): void => flushSync(() => setPrinting(true));
    const after = (): void => setPrinting(false);
    window.addEventListener("beforeprint", before);
    window.addEventListener("afterprint", after);
    return () => {
      window.removeEventListener("beforeprint", before);
      window.removeEventListener("afterprint", after);
    };
  }, []);
  return printing;
}

interface Props extends Workpiece {
  readonly works: readonly WorkStep[];
}

/** The whole order of work on paper, with what is measured and blanks for what is not. */
export function WorkList({ works, ...piece }: Props) {
  const { name } = piece.instrument;
  return (
    <section className="work-list" aria-label="The whole list">
      <h2 dir="auto">{name === "" ? "Unnamed instrument" : name}</h2>
      <p>
        Order of work, <time>{new Date().toLocaleDateString("en", { dateStyle: "long" })}</time>
      </p>
      <ol>
        {works.map((work) => (
          <PrintedStep key={work.id} work={work} {...piece} />
        ))}
      </ol>
    </section>
  );
}

function PrintedStep({ work, ...piece }: Workpiece & { readonly work: WorkStep }) {
  const units = useRimwright((state) => state.choices.units);
  const record = useRecord();
  const say = (phrase: Phrase): string => sayPhrase(phrase, units);
  const { id, caution } = work;
  const { method } = piece.instrument.dome;
  const keys = measurementsAt(id, method).filter((key) => key !== "overrun");
  return (
    <li>
      <h3>
        {stepNameOf(id, method)}
        <span className="printed-done">Done: {record.done[id] ?? <Blank />}</span>
      </h3>
      {work.instructions.map((phrase) => (
        <p key={say(phrase)}>{say(phrase)}</p>
      ))}
      <p>
        <b>Measure:</b> {say(work.measure)}
      </p>
      {keys.length > 0 && (
        <table>
          <thead>
            <tr>
              <td />
              <th scope="col">expected</th>
              <th scope="col">measured</th>
              <th scope="col">on</th>
            </tr>
          </thead>
          <tbody>
            {keys.map((key) => (
              <PrintedMeasurement key={key} measurement={key} {...piece} />
            ))}
          </tbody>
        </table>
      )}
      <p>
        <b>The usual mistake:</b> {say(work.mistake)} {say(work.sign)}
      </p>
      {caution !== null && (
        <p>
          <b>Caution:</b> {say(caution)}
        </p>
      )}
      <p className="printed-note">Note: {record.notes[id] ?? <Blank />}</p>
    </li>
  );
}

const Blank = () => <span className="blank" />;

function PrintedMeasurement({
  instrument,
  profile,
  measurement,
}: Workpiece & { readonly measurement: MeasurementKey }) {
  const units = useRimwright((state) => state.choices.units);
  const record = useRecord();
  const taken = record.readings[measurement];
  const expected = expectedOf(instrument, record, measurement, { ok: true, profile });
  const say = (mm: number): string => height(mm, units);
  return (
    <tr>
      <th scope="row">{measurementField(measurement).label}</th>
      <td>{expected === null ? "" : `${say(expected.value)} ± ${say(expected.within)}`}</td>
      <td className="to-fill">{taken === undefined ? "" : say(taken.value)}</td>
      <td className="to-fill">{taken?.date}</td>
    </tr>
  );
}
