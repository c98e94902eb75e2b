import type { Entry } from "./shelf-entry.ts";

/** Theirs, with all that is ours alone before it in the history: an edit of visit `run`. */
export function metBy(theirs: Entry, ours: Entry, run: string): Entry {
  const past = theirs.history.past;
  const known = new Set([...past, theirs.work].map((work) => JSON.stringify(work)));
  const own = [...ours.history.past, ours.work].filter((work) => !known.has(JSON.stringify(work)));
  if (own.length === 0) return theirs;
  const edit = Math.max(theirs.stamp.edit, ours.stamp.edit) + 1;
  return { ...theirs, stamp: { run, edit }, history: { past: [...past, ...own], future: [] } };
}
