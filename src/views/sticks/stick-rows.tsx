import { useMemo, useState } from "react";
import type { Stick } from "../../profile/sticks/on-stick.ts";
import type { Model } from "../../store/document/state.ts";
import type { OwnedStick } from "../../store/files/sticks-form.ts";
import type { StickSource } from "../../store/shelf/shop.ts";
import { csvOf } from "../csv.ts";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";
import { chosenRows, firstChoice } from "./row-choice.ts";
import { RowTools } from "./row-tools.tsx";
import { type Side, type StickRow, sayLength, stickName } from "./stick-columns.ts";
import { StickTable } from "./stick-table.tsx";
import { stickRowsForCsv } from "./sticks-csv.ts";
import { useChanges } from "./use-changes.ts";
import { onStickNow } from "./use-stick-rows.ts";

const sources = [
  ["both", "invented and shelf"],
  ["presets", "invented"],
  ["shelf", "shelf"],
] as const;

const sides = [
  ["on", "what it does on each"],
  ["wants", "what each wants"],
] as const;

/** Rows shown at once: thousands are searched, not scrolled; on paper they fill one page. */
const page = 25;

interface Props {
  readonly rows: readonly StickRow[];
  readonly isTicked: (id: string) => boolean;
  readonly tick: (ids: readonly string[] | null) => void;
  readonly owned: readonly OwnedStick[];
  readonly stick: Stick;
  readonly share: number;
  readonly source: StickSource;
  readonly models: readonly Model[];
  readonly told: string;
  readonly onSource: (to: StickSource) => void;
  readonly onSheets: () => void;
}

/** The instruments: which of them, found how, as a table and out of it. */
export function StickRows(props: Props) {
  const { rows, isTicked, tick, owned, stick, share, source, told } = props;
  const units = useRimwright((state) => state.choices.units);
  const [side, setSide] = useState<Side>("on");
  const [choice, setChoice] = useState(firstChoice);
  const [most, setMost] = useState(page);
  const found = useMemo(() => chosenRows(rows, choice, isTicked), [rows, choice, isTicked]);
  // What is in sight follows the stick at once, however many rows there are.
  const shown = found
    .slice(0, most)
    .map((row) => ({ ...row, on: onStickNow(row.instrument, stick) }));
  const changeOf = useChanges(side === "wants" ? shown : [], owned, stick);
  const ids = rows.map(({ instrument }) => instrument.id);
  const tickOne = (id: string, on: boolean): void =>
    tick(ids.filter((one) => (one === id ? on : isTicked(one))));
  const isReady = share === 1;
  return (
    <section className="stick-rows" aria-labelledby="stick-rows" aria-busy={!isReady}>
      <h2 id="stick-rows">Instruments</h2>
      <p className="stick-printed">
        A stick of {sayLength(stick.thickness, units)}
        {stick.width !== null && `, ${sayLength(stick.width, units)} wide`};{" "}
        {new Date().toLocaleDateString("en", { dateStyle: "long" })}. Rimwright.
        {side === "wants" &&
          owned.length > 0 &&
          ` My sticks: ${owned.map((one, i) => `${stickName(one, i)} ${sayLength(one.thickness, units)}`).join(", ")}.`}
      </p>
      <div className="stick-line stick-tools">
        <ChoiceButtons legend="From" options={sources} value={source} onChoose={props.onSource} />
        <ChoiceButtons legend="The table shows" options={sides} value={side} onChoose={setSide} />
      </div>
      <RowTools choice={choice} models={props.models} units={units} onChoose={setChoice} />
      <div className="stick-line stick-told" role="status">
        <span>
          {found.length === rows.length ? rows.length : `${found.length} of ${rows.length}`}{" "}
          {rows.length === 1 ? "instrument" : "instruments"}, {ids.filter(isTicked).length} ticked.
        </span>
        {told !== "" && <span>{told}</span>}
        {!isReady && <progress aria-label="Worked out" max={1} value={share} />}
      </div>
      <RowActs {...{ found, isReady, tick }} onSheets={props.onSheets} />
      <StickTable
        rows={shown}
        {...{ side, units, choice, owned, isTicked, changeOf }}
        onTick={tickOne}
        onSort={(by) =>
          setChoice({ ...choice, by, descending: choice.by === by && !choice.descending })
        }
      />
      {found.length > most && (
        <button type="button" className="stick-more" onClick={() => setMost(most + page)}>
          Show {Math.min(page, found.length - most)} more of {found.length}
        </button>
      )}
    </section>
  );
}

interface ActsProps extends Pick<Props, "tick" | "onSheets"> {
  readonly found: readonly StickRow[];
  readonly isReady: boolean;
}

/** What is done with the rows found: ticked, saved, printed. */
function RowActs({ found, isReady, tick, onSheets }: ActsProps) {
  const units = useRimwright((state) => state.choices.units);
  return (
    <div className="stick-line stick-tools">
      <button type="button" onClick={() => tick(found.map(({ instrument }) => instrument.id))}>
        Tick only these {found.length}
      </button>
      <button type="button" onClick={() => tick(null)}>
        Tick all
      </button>
      <button type="button" onClick={() => tick([])}>
        Tick none
      </button>
      <button
        type="button"
        disabled={!isReady}
        onClick={() =>
          saveFile("rimwright-sticks.csv", "text/csv", csvOf(stickRowsForCsv(found, units)))
        }
      >
        Save as CSV
      </button>
      <button type="button" onClick={() => window.print()}>
        Print the table
      </button>
      <button type="button" onClick={onSheets}>
        Sheets of all ticked
      </button>
    </div>
  );
}
