import { Fragment } from "react";
import { windowMarks } from "../../drawing/charts/window-marks.ts";
import type { Units } from "../../instrument/length.ts";
import { outcomeNames } from "../../profile/comparison/outcomes.ts";
import type { OnStick } from "../../profile/sticks/on-stick.ts";
import type { FieldChange } from "../../profile/sticks/shared-shim-changes.ts";
import type { OwnedStick } from "../../store/files/sticks-form.ts";
import { outcomeMeasure, saidRange } from "../figures/chart-measures.ts";
import { SceneFigure } from "../figures/scene-figure.tsx";
import { nameOf } from "../find-names.ts";
import { Mark } from "../verdict/standing-mark.tsx";
import { changeSaid } from "./change-said.ts";
import type { RowChoice } from "./row-choice.ts";
import {
  type Column,
  type ColumnKey,
  columns,
  isRowServed,
  limiterNames,
  noFigures,
  onStickKinds,
  type Side,
  type StickRow,
  saddleRange,
  sayLength,
  standingOf,
  stickName,
} from "./stick-columns.ts";

interface Props {
  readonly rows: readonly StickRow[];
  readonly side: Side;
  readonly units: Units;
  readonly choice: RowChoice;
  readonly owned: readonly OwnedStick[];
  readonly isTicked: (id: string) => boolean;
  readonly onTick: (id: string, on: boolean) => void;
  readonly onSort: (by: ColumnKey) => void;
  /** What lets an instrument lie on the stick tried, or on the nearest owned; undefined while it is worked out. */
  readonly changeOf: (row: StickRow) => FieldChange | null | undefined;
}

/** Instruments by outcomes: what the stick tried does on each, or what each wants. */
export function StickTable(props: Props) {
  const { rows, side, units, choice, owned, isTicked, onTick, onSort } = props;
  const shown = columns.filter((column) => column.side === null || column.side === side);
  return (
    // A table wider than the page scrolls under its own first column.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: so that it can be scrolled by keyboard.
    <section className="stick-room" tabIndex={0} aria-label="Table of instruments">
      <table className="stick-table">
        <thead>
          <tr>
            {shown.map((column) => (
              <Fragment key={column.key}>
                <HeadCell {...{ column, choice, onSort }} />
                {column.key === "name" && side === "on" && <th scope="col">Windows</th>}
              </Fragment>
            ))}
            {side === "wants" && <th scope="col">Cheapest change</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.instrument.id}>
              <th scope="row">
                <label className="stick-tick">
                  <input
                    type="checkbox"
                    className="tick"
                    checked={isTicked(row.instrument.id)}
                    onChange={({ target }) => onTick(row.instrument.id, target.checked)}
                  />
                  <span dir="auto">{nameOf(row.instrument.name)}</span>
                </label>
              </th>
              {side === "on" ? (
                <OnCells row={row} units={units} />
              ) : (
                <WantsCells {...{ row, units, owned }} change={props.changeOf(row)} />
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface HeadProps {
  readonly column: Column;
  readonly choice: RowChoice;
  readonly onSort: (by: ColumnKey) => void;
}

function HeadCell({ column: { key, name }, choice, onSort }: HeadProps) {
  const isSorted = choice.by === key;
  const sorted = isSorted ? (choice.descending ? "descending" : "ascending") : undefined;
  return (
    <th scope="col" aria-sort={sorted}>
      <button type="button" className="stick-sort" onClick={() => onSort(key)}>
        {name} {isSorted && <span aria-hidden="true">{choice.descending ? "▾" : "▴"}</span>}
      </button>
    </th>
  );
}

function OnCells({ row, units }: { readonly row: StickRow; readonly units: Units }) {
  const { on, instrument } = row;
  if (on === null || !on.ok)
    return (
      <td className="stick-none" colSpan={onStickKinds.length + 2}>
        {noFigures(on, units)}
      </td>
    );
  const marks = onStickKinds.map((kind) => ({
    role: outcomeNames[kind][0],
    value: on.on[kind],
    range: instrument.windows[kind],
  }));
  return (
    <>
      <td className="stick-marks">
        <SceneFigure scene={windowMarks(marksSaid(row), marks)} />
      </td>
      {onStickKinds.map((key) => (
        <td key={key}>
          <Standing row={row} of={key} />
          {outcomeMeasure(key, units).say(on.on[key])}
          {key === "saddleExposure" && (
            <small>
              {saidRange(saddleRange(on.on.stringExposure), outcomeMeasure(key, units))}
            </small>
          )}
        </td>
      ))}
      <td>
        <Standing row={row} of="overrunLength" />
        {overrunSaid(on.on, units)}
      </td>
    </>
  );
}

function Standing({ row, of }: { readonly row: StickRow; readonly of: ColumnKey }) {
  const stands = standingOf(row, of);
  if (stands === null) return null;
  return (
    <span className={`standing standing-${stands}`}>
      <Mark of={stands} />
      <span className="unseen">{stands}: </span>
    </span>
  );
}

const overrunSaid = ({ overrunLength }: OnStick, units: Units): string =>
  overrunLength === 0 ? "none" : outcomeMeasure("overrunLength", units).say(overrunLength);

/** What the picture shows, in words. */
function marksSaid(row: StickRow): string {
  const out = onStickKinds.filter((key) => standingOf(row, key) === "outside");
  if (out.length > 0)
    return `Outside: ${out.map((key) => outcomeNames[key][0].toLowerCase()).join(", ")}.`;
  return isRowServed(row) ? "Every window is met." : "Every window is met, and the flat overruns.";
}

interface WantsProps {
  readonly row: StickRow;
  readonly owned: readonly OwnedStick[];
  readonly units: Units;
  readonly change: FieldChange | null | undefined;
}

function WantsCells({ row, units, owned, change }: WantsProps) {
  const { wants } = row;
  if (wants === null)
    return (
      <td className="stick-none" colSpan={7}>
        …
      </td>
    );
  const { range, nearest } = wants;
  const say = (value: number | null | undefined): string =>
    value === null || value === undefined ? "–" : sayLength(value, units);
  const signed = (value: number | undefined): string =>
    value === undefined ? "–" : `${value > 0 ? "+" : ""}${sayLength(value, units)}`;
  return (
    <>
      <td>{say(wants.wanted)}</td>
      {typeof range === "string" ? (
        <td colSpan={2}>{noRange[range]}</td>
      ) : (
        <>
          <td>
            {say(range.low.shim)}
            <small>{limiterNames[range.low.by]}</small>
          </td>
          <td>
            {say(range.high.shim)}
            <small>{limiterNames[range.high.by]}</small>
          </td>
        </>
      )}
      <td>
        {nearest === null ? (
          "–"
        ) : (
          <>
            {signed(nearest.off)}
            <small>
              {calledAt(owned, nearest.index)}, {nearest.serves ? "serves" : "does not serve"}
            </small>
          </>
        )}
      </td>
      <td>{signed(nearest?.cost?.bridgeClearance)}</td>
      <td>{signed(nearest?.cost?.saddleExposure)}</td>
      <td className="stick-change">
        {nearest?.serves === true ? "none needed" : changeTold(change, units)}
      </td>
    </>
  );
}

function calledAt(owned: readonly OwnedStick[], i: number): string {
  const stick = owned[i];
  return stick === undefined ? "" : stickName(stick, i);
}

function changeTold(change: FieldChange | null | undefined, units: Units): string {
  if (change === undefined) return "…";
  return change === null ? "none alone is enough" : changeSaid(change, units);
}

const noRange = {
  "no-stick": "made without a stick",
  "no-plan": "no plan",
  "none-serves": "no stick serves: its windows do not go together",
} as const;
