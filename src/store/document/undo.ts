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

/** The document as it was when what goes on with `step` began: now, unless the last edit was of the same step. */
export function beganAt(state: State, step: UndoStep): Document {
  return (isOneStep(state.undoStep, step) ? state.past.at(-1) : undefined) ?? state;
}

const isOneStep = (a: UndoStep | null, b: UndoStep | null): boolean =>
  a !== null && b !== null && a.at !== null && a.name === b.name && a.at === b.at;

export function undo(state: State): State {
  const document = state.past.at(-1);
  if (document === undefined) return state;
  return {
    ...state,
    ...restored(document, state),
    past: state.past.slice(0, -1),
    future: [documentIn(state), ...state.future],
    lastChanged: null,
    undoStep: null,
  };
}

export function redo(state: State): State {
  const [document, ...future] = state.future;
  if (document === undefined) return state;
  return {
    ...state,
    ...restored(document, state),
    past: [...state.past, documentIn(state)],
    future,
    lastChanged: null,
    undoStep: null,
  };
}

/** What is plotted stays as it is now: to choose that is no edit. */
const restored = (document: Document, { comparison }: Document): Document => ({
  ...document,
  comparison: { ...comparison, variants: document.comparison.variants },
});

export const documentIn = (document: Document): Document => ({
  instrument: document.instrument,
  lastGood: document.lastGood,
  texts: document.texts,
  lastNumbers: document.lastNumbers,
  comparison: document.comparison,
  asBuilt: document.asBuilt,
  readingTexts: document.readingTexts,
  isModel: document.isModel,
  madeFrom: document.madeFrom,
});

/** Whether two are the same in everything that is saved. */
export const nothingToSave = (a: Document, b: Document): boolean =>
  nothingToUndo(a, b) && a.comparison === b.comparison;

/** Whether there is nothing between two that could be taken back. */
const nothingToUndo = (a: Document, b: Document): boolean =>
  a.instrument === b.instrument &&
  a.texts === b.texts &&
  a.lastNumbers === b.lastNumbers &&
  a.comparison.variants === b.comparison.variants &&
  a.asBuilt === b.asBuilt &&
  a.readingTexts === b.readingTexts &&
  a.isModel === b.isModel &&
  a.madeFrom === b.madeFrom;
