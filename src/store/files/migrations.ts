import { asJson, type Json } from "../document/json.ts";

// Version 1 kept an instrument's comparison and record beside its work; version 2 keeps them in it.

/** An entry of the shelf as version 2 has it. */
export function entryFromOne({ comparison, asBuilt, work, history, ...entry }: Json): Json {
  const beside = { comparison, asBuilt };
  return {
    ...entry,
    version: 2,
    work: { ...asJson(work), ...beside },
    history: historyWith(history, beside),
  };
}

/** The tab's own state as version 2 has it. `compare` and `bench` are what version 1 kept under keys of their own. */
export function keptFromOne(kept: Json, compare: Json, bench: Json): Json {
  const partsOf = (work: Json): Json => {
    const id = String(asJson(work["instrument"])["id"]);
    return {
      comparison: ownOf(compare, id),
      asBuilt: ownOf(bench["records"], id),
      readingTexts: ownOf(bench["texts"], id),
    };
  };
  const putAway = asJson(kept["putAway"]);
  return {
    ...kept,
    ...partsOf(kept),
    version: 2,
    history: historyWith(kept["history"], partsOf(kept)),
    putAway: { ...putAway, ...partsOf(putAway) },
  };
}

/** Acts from before it was brought over take back nothing of what was kept beside them. */
function historyWith(history: unknown, beside: Json): Json {
  const { past, future } = asJson(history);
  const withIt = (works: unknown): readonly Json[] =>
    Array.isArray(works) ? works.map((work) => ({ ...asJson(work), ...beside })) : [];
  return { past: withIt(past), future: withIt(future) };
}

const ownOf = (all: unknown, id: string): unknown =>
  Object.hasOwn(asJson(all), id) ? asJson(all)[id] : undefined;
