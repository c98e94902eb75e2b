import { act, cleanup } from "@testing-library/react";
import type { ComponentType } from "react";
import { afterEach, beforeAll, expect, test, vi } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { fieldAt, fieldPaths } from "../../src/instrument/fields.ts";
import { setField, setNone } from "../../src/store/document/edits.ts";
import { newDocument, type State } from "../../src/store/document/state.ts";
import { BenchView } from "../../src/views/bench/bench-view.tsx";
import { CompareView } from "../../src/views/compare/compare-view.tsx";
import { LayoutView } from "../../src/views/layout/layout-view.tsx";
import { RimView } from "../../src/views/rim/rim-view.tsx";
import { SheetView } from "../../src/views/sheet/sheet-view.tsx";
import { runJobsHere, showView, stubPaper } from "./show-view.tsx";

/*
 * Every view on the instrument with one field at either end of what it takes, another at a time: what has no
 * profile shows the last that had one.
 */

vi.setConfig({ testTimeout: 300_000 });
beforeAll(() => {
  stubPaper();
});

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

/** The ends of what each field takes, and none where it can be none. */
const ends: readonly (readonly [string, (state: State) => State])[] = fieldPaths.flatMap((path) => {
  const { min, max, nullWord } = fieldAt(path, defaultInstrument.target.kind);
  const at = (value: number) =>
    [`${path} ${value}`, (state: State) => setField(state, path, value)] as const;
  return [
    at(min),
    at(max),
    ...(nullWord === undefined
      ? []
      : [[`${path} none`, (state: State) => setNone(state, path, true)] as const]),
  ];
});

const views: readonly (readonly [string, ComponentType])[] = [
  ["Layout", LayoutView],
  ["Compare", CompareView],
  ["Rim", RimView],
  ["Bench", BenchView],
  ["Sheet", SheetView],
];

test.each(views)("%s shows numbers and no fault at the ends of every field", async (_, View) => {
  runJobsHere();
  const { store } = showView(<View />);
  const shown = new Set<string>();
  for (const [where, change] of ends) {
    await act(async () => {
      store.setState((state) => change({ ...state, ...newDocument(defaultInstrument) }));
      // What is drawn a frame later.
      await new Promise((drawn) => setTimeout(drawn, 20));
    });
    const page = document.body.innerHTML;
    expect(/NaN|Infinity|undefined|\[object|failed on these numbers/.exec(page), where).toBeNull();
    shown.add(page);
  }
  // Most of them show in every view: it was drawn again.
  expect(shown.size).toBeGreaterThan(ends.length / 2);
});
