import { describe, expect, test } from "vitest";
import { presets } from "../../../src/instrument/presets.ts";
import { startFrom, stepField, typeField } from "../../../src/store/document/edits.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { documentIn, recorded, redo, undo } from "../../../src/store/document/undo.ts";

const act = (state: State, edit: (state: State) => State): State => recorded(state, edit(state));

describe("undo", () => {
  test("takes a whole gesture back, and redo does it again", () => {
    const typed = ["4", "48", "480"].reduce(
      (state, text) => act(state, (before) => typeField(before, "body.length", text)),
      firstState,
    );
    expect(typed.past).toHaveLength(1);
    const back = act(typed, undo);
    expect(documentIn(back)).toEqual(documentIn(firstState));
    expect(documentIn(act(back, redo))).toEqual(documentIn(typed));
  });

  test("takes acts back one by one, the last first", () => {
    const once = act(firstState, (state) => stepField(state, "body.length", 1));
    const twice = act(once, (state) => stepField(state, "shim.contact", 1));
    expect(documentIn(act(twice, undo))).toEqual(documentIn(once));
    expect(documentIn(act(act(twice, undo), undo))).toEqual(documentIn(firstState));
  });

  test("forgets what was taken back once something else is done", () => {
    const once = act(firstState, (state) => stepField(state, "body.length", 1));
    const other = act(act(once, undo), (state) => stepField(state, "shim.contact", 1));
    expect(other.future).toEqual([]);
    expect(act(other, redo)).toEqual(other);
  });

  test("does nothing where there is nothing to take back", () => {
    expect(act(firstState, undo)).toBe(firstState);
    expect(act(firstState, redo)).toBe(firstState);
  });

  test("does not lead from one instrument into another", () => {
    const [preset] = presets;
    if (preset === undefined) throw new Error("no preset");
    const once = act(firstState, (state) => stepField(state, "body.length", 1));
    const other = act(once, (state) => startFrom(state, preset, "other"));
    expect(other.past).toEqual([]);
  });

  test("keeps the last hundred acts", () => {
    let state = firstState;
    for (let i = 0; i < 120; i++) {
      state = act(state, (before) =>
        stepField(before, i % 2 === 0 ? "body.length" : "shim.contact", 1),
      );
    }
    expect(state.past).toHaveLength(100);
  });
});
