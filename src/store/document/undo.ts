import { noHistory, type State, type Work } from "./state.ts";

const mostActs = 100;

/**
 * `after` an edit of `before`, with the way back. Edits in a row under one gesture are one act. Another
 * instrument has a history of its own; what moves along the history is no act.
 */
export function recorded(before: State, after: State): State {
  if (after.instrument.id !== before.instrument.id) return { ...after, ...noHistory };
  if (sameWork(before, after) || after.past !== before.past) return after;
  const goesOn = after.gesture !== "" && after.gesture === before.gesture;
  const past = goesOn ? before.past : [...before.past, workIn(before)].slice(-mostActs);
  return { ...after, past, future: [] };
}

export function undo(state: State): State {
  const work = state.past.at(-1);
  if (work === undefined) return state;
  return {
    ...state,
    ...broughtBack(work, state),
    past: state.past.slice(0, -1),
    future: [workIn(state), ...state.future],
    lastChanged: null,
    gesture: "",
  };
}

export function redo(state: State): State {
  const [work, ...future] = state.future;
  if (work === undefined) return state;
  return {
    ...state,
    ...broughtBack(work, state),
    past: [...state.past, workIn(state)],
    future,
    lastChanged: null,
    gesture: "",
  };
}

/** What is plotted stays as it is now: to choose that is no edit. */
const broughtBack = (work: Work, { comparison }: Work): Work => ({
  ...work,
  comparison: { ...comparison, variants: work.comparison.variants },
});

export const workIn = (work: Work): Work => ({
  instrument: work.instrument,
  lastGood: work.lastGood,
  texts: work.texts,
  setAside: work.setAside,
  comparison: work.comparison,
  asBuilt: work.asBuilt,
  readingTexts: work.readingTexts,
});

/** Whether two are the same in everything that is saved. */
export const nothingToSave = (a: Work, b: Work): boolean =>
  sameWork(a, b) && a.comparison === b.comparison;

/** Whether there is nothing between two that could be taken back. */
export const sameWork = (a: Work, b: Work): boolean =>
  a.instrument === b.instrument &&
  a.texts === b.texts &&
  a.setAside === b.setAside &&
  a.comparison.variants === b.comparison.variants &&
  a.asBuilt === b.asBuilt &&
  a.readingTexts === b.readingTexts;
