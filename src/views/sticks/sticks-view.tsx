import { useCallback, useMemo, useState } from "react";
import type { Stick } from "../../profile/sticks/on-stick.ts";
import type { Model } from "../../store/document/state.ts";
import type { OwnedStick } from "../../store/files/sticks-form.ts";
import type { StickSource } from "../../store/shelf/shop.ts";
import type { StickChangesJob } from "../../worker/messages.ts";
import { csvOf } from "../csv.ts";
import { ErrorBoundary } from "../error-boundary.tsx";
import { ChoiceButtons } from "../fields/choice-buttons.tsx";
import { saveFile } from "../save-file.ts";
import { useRimwright } from "../store-context.ts";
import { useJob } from "../use-job.ts";
import { useShop, useShopEdit, useShopIsOpen } from "../use-shop.ts";
import { RowTools } from "./row-tools.tsx";
import { SharedShimPanel } from "./shared-shim-panel.tsx";
import { SheetsRun } from "./sheets-run.tsx";
import {
  chosenRows,
  firstChoice,
  isRowServed,
  type Side,
  type StickRow,
  sayLength,
  stickName,
} from "./stick-columns.ts";
import { StickTable } from "./stick-table.tsx";
import { stickRowsForCsv } from "./sticks-csv.ts";
import "./sticks.css";
import { OwnedPanel, TrialPanel } from "./trial-panel.tsx";
import { useStickInstruments } from "./use-stick-instruments.ts";
import { onStickNow, useStickRows } from "./use-stick-rows.ts";
import { WhichSticks } from "./which-sticks.tsx";

/** What the shop's sticks do on each instrument, and which sticks its instruments want. */
export function SticksView() {
  return useShopIsOpen() ? (
    <OpenSticks />
  ) : (
    <main className="sticks">
      <p role="status">Opening the sticks…</p>
    </main>
  );
}

function OpenSticks() {
  const { stick, source, ticked } = useShop(({ trial }) => trial);
  const { owned } = useShop(({ sticks }) => sticks);
  const edit = useShopEdit();
  const [isPrinting, setPrinting] = useState(false);
  const laid = useStickInstruments(source);
  const { rows, share, failed } = useStickRows(laid, stick, owned);
  const chosen = useMemo(() => (ticked === null ? null : new Set(ticked)), [ticked]);
  const isTicked = useCallback((id: string) => chosen === null || chosen.has(id), [chosen]);
  const counted = useMemo(
    () => rows.filter(({ instrument }) => isTicked(instrument.id)),
    [rows, isTicked],
  );
  const members = useSame(
    counted.map(({ instrument }) => instrument),
    Object.is,
  );
  const tick = (ids: readonly string[] | null): void =>
    edit((shop) => ({ ...shop, trial: { ...shop.trial, ticked: ids } }));
  const tryThickness = (thickness: number): void =>
    edit((shop) => ({ ...shop, trial: { ...shop.trial, stick: { thickness, width: null } } }));
  if (isPrinting) {
    return (
      <main className="sticks">
        <SheetsRun instruments={members} onBack={() => setPrinting(false)} />
      </main>
    );
  }
  return (
    <main className="sticks">
      <div className="stick-pair">
        <TrialPanel served={counted.filter(isRowServed).length} of={counted.length} />
        <OwnedPanel />
      </div>
      <ErrorBoundary what="The table of instruments">
        <Rows
          {...{ rows, isTicked, tick, owned, stick, share, source }}
          models={laid.models}
          told={failed ? "This could not be worked out in this browser." : laid.told}
          onSource={(to) => edit((shop) => ({ ...shop, trial: { ...shop.trial, source: to } }))}
          onSheets={() => setPrinting(true)}
        />
      </ErrorBoundary>
      <ErrorBoundary what="Which sticks to have">
        <WhichSticks rows={counted} ownsSome={owned.length > 0} onTry={tryThickness} />
      </ErrorBoundary>
      <ErrorBoundary what="The shop’s one shim">
        <SharedShimPanel instruments={members} shim={stick.thickness} />
      </ErrorBoundary>
    </main>
  );
}

/** The list before while it holds the same. */
function useSame<Item>(
  items: readonly Item[],
  isSame: (a: Item, b: Item | undefined) => boolean,
): readonly Item[] {
  const [kept, keep] = useState(items);
  const holdsSame = kept.length === items.length && kept.every((one, i) => isSame(one, items[i]));
  if (!holdsSame) keep(items);
  return holdsSame ? kept : items;
}

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

interface RowsProps {
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

function Rows(props: RowsProps) {
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
  const foundIds = found.map(({ instrument }) => instrument.id);
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
      <div className="stick-line stick-tools">
        <button type="button" onClick={() => tick(foundIds)}>
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
        <button type="button" onClick={props.onSheets}>
          Sheets of all ticked
        </button>
      </div>
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

/** The cheapest changes for rows in sight: for the nearest stick owned, or for the one tried where none is. */
function useChanges(rows: readonly StickRow[], owned: readonly Stick[], stick: Stick) {
  const asked = useSame(
    rows.map(({ instrument, wants }) => ({
      instrument,
      stick: owned[wants?.nearest?.index ?? -1] ?? stick,
    })),
    (a, b) => a.instrument === b?.instrument && a.stick === b.stick,
  );
  const job = useMemo(
    (): StickChangesJob | null => (asked.length === 0 ? null : { kind: "stick-changes", asked }),
    [asked],
  );
  const { progress, shown } = useJob<"stick-changes">(job);
  return ({ instrument }: StickRow) => {
    const at =
      shown?.asked === asked ? asked.findIndex((one) => one.instrument === instrument) : -1;
    return progress?.answer[at];
  };
}
