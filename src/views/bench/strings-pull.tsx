import type { PulledString } from "../../instrument/as-built/as-built.ts";
import { parseLength, type Units } from "../../instrument/length.ts";
import { decimalText, plainText, readNumber } from "../../instrument/written-number.ts";
import { newtonsPerPound, pullsOf, usualNotes } from "../../profile/bench/pull.ts";
import { changeString } from "../../store/document/as-built-edits.ts";
import { type NumberFormat, optional, ValueEntry } from "../fields/value-entry.tsx";
import { addStyles } from "../late-styles.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import styles from "./strings-pull.css?inline";
import { useOutlook, type Workpiece } from "./use-outlook.ts";

addStyles(styles);

/** How hard the strings pull, for information. */
export function StringsPull(piece: Workpiece) {
  const { record, result } = useOutlook(piece);
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const { instrument } = piece;
  const strings = stringsOf(record.strings, instrument.strings.count);
  if (!result.ok) return <p>Put the measurement named above right first.</p>;
  const { heights, givens } = result.outlook;
  const pull = pullsOf(instrument, heights, givens.middleString, strings);
  const change = (i: number, part: Partial<PulledString>): void =>
    edit((state) => changeString(state, strings, i, part));
  return (
    <section className="pull" aria-label="Strings’ pull">
      <h2>Strings’ pull, for information</h2>
      <p className="pull-warning">
        <strong>This is no structural check.</strong> It says how hard the strings pull, not whether
        top, bridge and neck bear it.
      </p>
      <p>
        Enter each string’s unit weight as its maker prints it, or, if it is plain steel, its
        diameter. Wound strings need the unit weight.
      </p>
      <table>
        <caption className="unseen">Strings, bass first</caption>
        <thead>
          <tr>
            <th scope="col">String</th>
            <th scope="col">Note</th>
            <th scope="col">Unit weight, lb/in</th>
            <th scope="col">Plain steel, {units === "mm" ? "mm" : "in"}</th>
            <th scope="col">Pull</th>
          </tr>
        </thead>
        <tbody>
          {strings.map((string, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a string is its place.
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              <td>
                <span className="pull-label">Note</span>
                <input
                  aria-label={`String ${i + 1}: note`}
                  value={string.note}
                  maxLength={20}
                  autoComplete="off"
                  spellCheck={false}
                  onChange={({ target }) => change(i, { note: target.value })}
                />
              </td>
              <td>
                <span className="pull-label">lb/in</span>
                <ValueEntry
                  label={`String ${i + 1}: unit weight`}
                  shown=""
                  value={string.unitWeight}
                  format={weightFormat}
                  onChange={(unitWeight) => change(i, { unitWeight })}
                />
              </td>
              <td>
                <span className="pull-label">steel, {units === "mm" ? "mm" : "in"}</span>
                <ValueEntry
                  label={`String ${i + 1}: diameter`}
                  shown=""
                  value={string.diameter}
                  format={diameterFormat(units)}
                  onChange={(diameter) => change(i, { diameter })}
                />
              </td>
              <td className="pull-value">{pullSaid(pull.strings[i] ?? null)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <dl className="pull-sums">
        <div>
          <dt>{pull.unknown === 0 ? "All strings" : `All but the ${pull.unknown} not known`}</dt>
          <dd>{pullSaid(pull.total)}</dd>
        </div>
        <div>
          <dt>On the bridge, along the strings</dt>
          <dd>{pullSaid(pull.bridgeForward)}</dd>
        </div>
        <div>
          <dt>Down on the saddle</dt>
          <dd>{pullSaid(pull.saddleDown)}</dd>
        </div>
        <div>
          <dt>Turning the bridge over, about the top</dt>
          <dd>{decimalText(pull.bridgeMoment, 2)} N·m</dd>
        </div>
        <div>
          <dt>Turning the neck up, about the flat at the body’s end</dt>
          <dd>{decimalText(pull.neckMoment, 2)} N·m</dd>
        </div>
      </dl>
      <p>
        A string’s pull is its unit weight times the square of twice its length times its frequency,
        over 386.4. Steel is counted at 0.282 pounds to the cubic inch. A4 is 440 Hz.
      </p>
    </section>
  );
}

const pullSaid = (newtons: number | null): string =>
  newtons === null
    ? "not known"
    : `${decimalText(newtons, 1)} N, ${decimalText(newtons / newtonsPerPound, 1)} lb`;

/** As many strings as the instrument has: those entered, then the usual notes. */
function stringsOf(entered: readonly PulledString[], count: number): readonly PulledString[] {
  return usualNotes(count).map(
    (note, i) => entered[i] ?? { note, unitWeight: null, diameter: null },
  );
}

const weightFormat: NumberFormat = optional({
  read: (text) => {
    const read = readNumber(plainText(text));
    if (!read.ok) return read;
    return read.value > 0 && read.value <= 1
      ? read
      : { ok: false, why: "A string weighs more than 0 and at most 1 lb/in." };
  },
  show: (value) => (value === null ? "" : decimalText(value, 8)),
  unitAfter: () => "",
});

const diameterFormat = (units: Units): NumberFormat => {
  const unit = units === "mm" ? "mm" : "in";
  return optional({
    read: (text) => {
      const read = parseLength(text, unit);
      if (!read.ok) return read;
      return read.mm > 0 && read.mm <= 10
        ? { ok: true, value: read.mm }
        : { ok: false, why: "A string is more than 0 and at most 10 mm thick." };
    },
    show: (value) => (value === null ? "" : decimalText(unit === "mm" ? value : value / 25.4, 4)),
    unitAfter: () => "",
  });
};
