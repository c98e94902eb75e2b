import { describe, expect, test, vi } from "vitest";
import { presets } from "../../../src/instrument/presets.ts";
import { chooseStretch, chooseUnits, fold, turnOver } from "../../../src/store/document/choices.ts";
import {
  rename,
  setNone,
  startFrom,
  switchTarget,
  typeField,
} from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { recorded } from "../../../src/store/document/undo.ts";
import type { TextStorage } from "../../../src/store/shelf/browser-storage.ts";
import { readTabCopy } from "../../../src/store/shelf/read-tab-copy.ts";
import { openTabStore, writeTabCopy } from "../../../src/store/shelf/tab-copy.ts";

function shelf(
  first: Record<string, string> = {},
): TextStorage & { readonly held: Map<string, string> } {
  const held = new Map(Object.entries(first));
  return {
    held,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
  };
}

function worked(): State {
  const edits: readonly ((state: State) => State)[] = [
    (state) => startFrom(state, presets[0] ?? state.instrument, "other"),
    (state) => typeField(state, "dome.dishRadius", "25 ft"),
    (state) => setNone(state, "body.backRadius", true),
    (state) => typeField(state, "neck.scale", "five"),
    (state) => typeField(state, "body.length", "300"),
    (state) => rename(state, "Half done"),
    (state) => switchTarget(state, "pitch"),
    (state) => chooseUnits(state, "in"),
    (state) => chooseStretch(state, 10),
    turnOver,
    (state) => fold(state, "body", true),
  ];
  return edits.reduce((state, edit) => edit(state), firstState);
}

describe("what is kept", () => {
  test("comes back whole: numbers that have no plan, texts, choices, and what was put away", () => {
    const storage = shelf();
    const state = worked();
    writeTabCopy(storage, state);
    const back = readTabCopy(storage);
    expect(back.instrument).toEqual(state.instrument);
    expect(back.lastGood).toEqual(state.lastGood);
    expect(back.texts).toEqual(state.texts);
    expect(back.lastNumbers).toEqual(state.lastNumbers);
    expect(back.previous).toEqual(state.previous);
    expect({ ...back.choices, folded: [...back.choices.folded].sort() }).toEqual({
      ...state.choices,
      folded: [...state.choices.folded].sort(),
      introduced: true,
    });
  });

  test.each([
    "",
    "{",
    "null",
    "7",
    '"text"',
    "[]",
    "{}",
    '{"lastGood":{}}',
    '{"lastGood":{"body":{"length":-1}}}',
    '{"lastGood":{"dome":{"flatLength":491}}}',
    '{"lastGood":{},"texts":{"__proto__":{"text":"x","units":"mm"},"body.length":{"text":7}}}',
    '{"lastGood":{},"instrument":{"body":{"length":"long"}},"choices":{"units":"ell","stretch":3,"folded":"all"}}',
    '{"lastGood":{},"setAside":{"dome.dishRadius":-5,"body.length":null}}',
  ])("reads %s as a state that works, whatever it holds", (text) => {
    const back = readTabCopy(shelf({ rimwright: text }));
    expect(back.choices.units).toBe("mm");
    expect(back.texts).toEqual({});
    expect(back.lastNumbers).toEqual({});
    expect(back.lastGood.body.length).toBeGreaterThan(0);
  });

  test("a browser that keeps nothing is no fault", () => {
    const refuses: TextStorage = {
      getItem: () => {
        throw new Error("refused");
      },
      setItem: () => {
        throw new Error("refused");
      },
    };
    expect(readTabCopy(refuses)).toBe(firstState);
    expect(writeTabCopy(refuses, firstState)).toBe(false);
  });

  test("is kept without its history where there is no room for that", () => {
    const state = recorded(firstState, typeField(firstState, "body.length", "493"));
    const roomy = shelf();
    writeTabCopy(roomy, state);
    expect(readTabCopy(roomy).past).toHaveLength(1);
    const full = (roomy.held.get("rimwright")?.length ?? 0) - 1;
    const tight = shelf();
    const storage: TextStorage = {
      getItem: tight.getItem,
      setItem: (key, value) => {
        if (value.length > full) throw new DOMException("full", "QuotaExceededError");
        tight.setItem(key, value);
      },
    };
    expect(writeTabCopy(storage, state)).toBe(true);
    expect(readTabCopy(storage)).toMatchObject({ instrument: state.instrument, past: [] });
  });

  test("is written a moment after a change, and at once when the page goes", () => {
    vi.useFakeTimers();
    const storage = shelf();
    const page = new EventTarget();
    const store = openTabStore(storage, page, firstState);
    store.setState((state) => typeField(state, "body.length", "493"));
    expect(storage.held.size).toBe(0);
    vi.advanceTimersByTime(500);
    expect(readTabCopy(storage).instrument.body.length).toBe(493);
    store.setState((state) => typeField(state, "body.length", "494"));
    page.dispatchEvent(new Event("pagehide"));
    expect(readTabCopy(storage).instrument.body.length).toBe(494);
    vi.useRealTimers();
  });
});
