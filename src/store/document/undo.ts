import { type Document, noHistory, type State, type UndoStep } from "./state.ts";

const mostSteps = 100;

/**
 * `after` an edit of `before`, with the way back. Another instrument has a history of its own; what moves along
 * the history is no step of it.
 */
export function recorded(before: State, after: State): State {
  if (after.instrument.id !== before.instrument.id) return { ...after, ...noHistory };
  if (nothingToUndo(before, after) || after.past !== before.past) return after;
  const goesOn = isOneStep(before.undoStep, after.undoStep);
  const past = goesOn ? before.past : [...before.past, documentIn(before)].slice(-mostSteps);
  return { ...after, past, future: [] };
}

const isOneStep = (a: UndoStep | null, b: UndoStep | null): boolean =>
  a !== null && b !== null && a.at !== null && a.name === b.name && a.at === b.at;

export function undo(state: State): State {
  const work = state.past.at(-1);
  if (work === undefined) return state;
  return {
    ...state,
    ...restored(work, state),
    past: state.past.slice(0, -1),
    future: [documentIn(state), ...state.future],
    lastChanged: null,
    undoStep: null,
  };
}

export function redo(state: State): State {
  const [work, ...future] = state.future;
  if (work === undefined) return state;
  return {
    ...state,
    ...restored(work, state),
    past: [...state.past, documentIn(state)],
    future,
    lastChanged: null,
    undoStep: null,
  };
}

/** What is plotted stays as it is now: to choose that is no edit. */
const restored = (work: Document, { comparison }: Document): Document => ({
  ...work,
  comparison: { ...comparison, variants: work.comparison.variants },
});

export const documentIn = (work: Document): Document => ({
  instrument: work.instrument,
  lastGood: work.lastGood,
  texts: work.texts,
  setAside: work.setAside,
  comparison: work.comparison,
  asBuilt: work.asBuilt,
  readingTexts: work.readingTexts,
});

/** Whether two are the same in everything that is saved. */
export const nothingToSave = (a: Document, b: Document): boolean =>
  nothingToUndo(a, b) && a.comparison === b.comparison;

/** Whether there is nothing between two that could be taken back. */
export const nothingToUndo = (a: Document, b: Document): boolean =>
  a.instrument === b.instrument &&
  a.texts === b.texts &&
  a.setAside === b.setAside &&
  a.comparison.variants === b.comparison.variants &&
  a.asBuilt === b.asBuilt &&
  a.readingTexts === b.readingTexts;
