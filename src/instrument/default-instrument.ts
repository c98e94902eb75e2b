import { bodyFields } from "./body-fields.ts";
import { domeFields, shimFields } from "./dome-fields.ts";
import type { Field } from "./field.ts";
import { defaultTolerances, fields } from "./fields.ts";
import type { Instrument } from "./instrument.ts";
import { neckFields } from "./neck-fields.ts";
import { targetFields, windowKinds } from "./outcome-fields.ts";
import { seatFields } from "./seat-fields.ts";
import { bridgeFields, stringFields } from "./string-fields.ts";

function defaultsOf<Group extends keyof Instrument>(
  group: Group,
  table: Readonly<Record<string, Field>>,
): Instrument[Group] {
  const numbers = Object.entries(table).map(
    ([path, field]) => [path.slice(group.length + 1), field.default] as const,
  );
  return Object.fromEntries(numbers) as Instrument[Group];
}

const windows = Object.fromEntries(
  windowKinds.map((kind) => {
    const [low, high] = [fields[`windows.${kind}.0`], fields[`windows.${kind}.1`]];
    return [kind, [low.default, high.default] as const];
  }),
) as Instrument["windows"];

/**
 * Every field's default: an invented orchestra-size guitar, 14 frets to the body. It is what the schema
 * makes of `{}` with these texts, without the schema, which a first visit need not wait for.
 */
export const defaultInstrument: Instrument = {
  format: "rimwright-instrument",
  version: 1,
  id: "orchestra-size",
  name: "Orchestra size",
  notes: "Invented for Rimwright, to show the tool at work. It is nobody's guitar.",
  body: defaultsOf("body", bodyFields),
  dome: { ...defaultsOf("dome", domeFields), method: "break" },
  shim: defaultsOf("shim", shimFields),
  seat: defaultsOf("seat", seatFields),
  neck: defaultsOf("neck", neckFields),
  bridge: defaultsOf("bridge", bridgeFields),
  strings: defaultsOf("strings", stringFields),
  target: { kind: "saddleExposure", value: targetFields.saddleExposure.default },
  windows,
  tolerances: defaultTolerances,
};
