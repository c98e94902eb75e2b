import { describe, expect, test } from "vitest";
import { readField } from "../../../src/instrument/field-value.ts";
import type { TargetKind } from "../../../src/instrument/instrument.ts";
import { targetKindsOf } from "../../../src/instrument/outcome-fields.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { chooseUnits } from "../../../src/store/document/choices.ts";
import {
  rename,
  reopenPrevious,
  setField,
  setNone,
  startFrom,
  stepField,
  switchMethod,
  switchTarget,
  typeField,
} from "../../../src/store/document/edits.ts";
import { fieldTrouble, shownText, unreadFields } from "../../../src/store/document/field-view.ts";
import { dragBreak, dragTarget, stepTarget } from "../../../src/store/document/hand-edits.ts";
import { shownPlan, solvedPlan } from "../../../src/store/document/plan.ts";
import { firstState, type State } from "../../../src/store/document/state.ts";
import { recorded, undo } from "../../../src/store/document/undo.ts";
import { addVariant, aimVariant } from "../../../src/store/document/variant-edits.ts";

const shimOf = (state: State): number => shownPlan(state)?.profile.shim ?? Number.NaN;

function preset(id: string): (typeof presets)[number] {
  const found = presets.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no preset ${id}`);
  return found;
}

describe("typing", () => {
  test("takes the value in and keeps the text as typed", () => {
    const state = typeField(firstState, "dome.dishRadius", "30 ft");
    expect(state.instrument.dome.dishRadius).toBe(9144);
    expect(shownText(state, "dome.dishRadius")).toBe("30 ft");
    expect(state.lastGood).toBe(state.instrument);
  });

  test.each(["", "abc", "1/0", "-", "1,234", "99999999", "NaN", "1e400", "<b>", "२०"])(
    "keeps %j as typed, says why, and leaves the instrument alone",
    (text) => {
      const state = typeField(firstState, "body.length", text);
      expect(state.instrument).toBe(firstState.instrument);
      expect(shownText(state, "body.length")).toBe(text);
      expect(fieldTrouble(state, "body.length")?.why.join("")).not.toBe("");
      expect(unreadFields(state)).toEqual(["body.length"]);
    },
  );

  test("what has no plan keeps the last that had one, and says why beside the field", () => {
    const state = typeField(firstState, "dome.flatLength", "480");
    expect(state.instrument.dome.flatLength).toBe(480);
    expect(solvedPlan(state.instrument).ok).toBe(false);
    expect(shownPlan(state)?.instrument).toBe(firstState.instrument);
    expect(shownPlan(state)?.refusal).not.toBeNull();
    expect(fieldTrouble(state, "dome.flatLength")).not.toBeNull();
  });

  test("numbers that do not go together are both kept until they do", () => {
    const shorter = typeField(firstState, "body.length", "390");
    expect(solvedPlan(shorter.instrument).ok).toBe(false);
    expect(shorter.instrument.body.length).toBe(390);
    const corrected = ["body.upperBoutAt", "body.waistAt", "body.soundholeAt"] as const;
    const values = ["320", "230", "270"];
    const fitted = corrected.reduce(
      (state, path, i) => typeField(state, path, values[i] ?? ""),
      shorter,
    );
    const whole = typeField(typeField(fitted, "neck.scale", "520"), "body.lowerBoutAt", "105");
    expect(solvedPlan(whole.instrument).ok).toBe(true);
    expect(shownPlan(whole)?.instrument.body.length).toBe(390);
  });

  test("the nearest value a refusal names can be taken, and works", () => {
    const refused = typeField(firstState, "dome.flatLength", "300");
    const trouble = fieldTrouble(refused, "dome.flatLength");
    const nearest = trouble?.nearest ?? Number.NaN;
    const corrected = setField(refused, "dome.flatLength", nearest);
    expect(solvedPlan(corrected.instrument).ok).toBe(true);
    expect(shownText(corrected, "dome.flatLength")).not.toBe("300");
  });
});

describe("units", () => {
  test("change what is shown, never what is stored", () => {
    const inches = chooseUnits(firstState, "in-fraction");
    expect(inches.instrument).toBe(firstState.instrument);
    expect(shownText(inches, "body.length")).toBe("19 3/8");
    expect(shownText(chooseUnits(inches, "mm"), "body.length")).toBe("492");
  });

  test("a bare number is not read anew in other units, and comes back as typed", () => {
    const typed = typeField(firstState, "body.length", "500,0");
    const inches = chooseUnits(typed, "in");
    expect(inches.instrument.body.length).toBe(500);
    expect(shownText(inches, "body.length")).toBe("19.685");
    expect(shownText(chooseUnits(inches, "mm"), "body.length")).toBe("500,0");
  });

  test("a text with its own unit, or an unreadable one, stays as typed", () => {
    const typed = typeField(firstState, "body.length", "19 3/4 in");
    expect(shownText(chooseUnits(typed, "in"), "body.length")).toBe("19 3/4 in");
    const nonsense = typeField(firstState, "body.length", "wide");
    expect(shownText(chooseUnits(nonsense, "in"), "body.length")).toBe("wide");
  });
});

describe("steps", () => {
  test("go to round figures in the units shown", () => {
    const odd = setField(firstState, "body.length", 492.37);
    expect(stepField(odd, "body.length", 1).instrument.body.length).toBe(493);
    expect(stepField(odd, "body.length", -10).instrument.body.length).toBe(483);
    const inches = chooseUnits(odd, "in-fraction");
    const stepped = stepField(inches, "body.length", 1).instrument.body.length;
    expect((stepped / 25.4) * 32).toBeCloseTo(Math.round((stepped / 25.4) * 32), 9);
    expect(shownText(stepField(firstState, "bridge.thickness", 1), "bridge.thickness")).toBe("8.7");
  });

  test("a foot at a time on a dish, whatever the units", () => {
    expect(stepField(firstState, "dome.dishRadius", 2).instrument.dome.dishRadius).toBeCloseTo(
      9144,
      9,
    );
  });

  test("stop at the field's own limits", () => {
    expect(stepField(firstState, "bridge.thickness", -1000).instrument.bridge.thickness).toBe(0);
  });
});

describe("none", () => {
  test("gives back the number it took away", () => {
    const typed = typeField(firstState, "dome.dishRadius", "25 ft");
    const flat = setNone(typed, "dome.dishRadius", true);
    expect(flat.instrument.dome.dishRadius).toBeNull();
    expect(shownText(flat, "dome.dishRadius")).toBe("none");
    expect(setNone(flat, "dome.dishRadius", false).instrument.dome.dishRadius).toBe(7620);
  });

  test("can be typed, and a step leaves it alone", () => {
    const flat = typeField(firstState, "body.backRadius", "flat");
    expect(flat.instrument.body.backRadius).toBeNull();
    expect(stepField(flat, "body.backRadius", 1)).toBe(flat);
    expect(setNone(flat, "body.backRadius", false).instrument.body.backRadius).toBe(4572);
  });
});

describe("the target", () => {
  const pairs = presets.flatMap(({ id }) =>
    targetKindsOf("break").map((kind) => [id, kind] as const),
  );
  test.each(pairs)("%s: switching to %s does not move the design", (id, kind) => {
    const start = startFrom(firstState, preset(id), "x");
    const switched = switchTarget(start, kind);
    expect(switched.instrument.target.kind).toBe(kind);
    expect(Math.abs(shimOf(switched) - shimOf(start))).toBeLessThan(1e-9);
  });

  test("a round of switches comes home", () => {
    const round: readonly TargetKind[] = ["pitch", "shim", "stringHeight", "bridgeClearance"];
    const end = round.reduce(switchTarget, firstState);
    expect(shimOf(end)).toBeCloseTo(shimOf(firstState), 8);
  });

  test("while nothing works, it starts from the plan still shown", () => {
    const refused = typeField(firstState, "target.value", "150");
    expect(solvedPlan(refused.instrument).ok).toBe(false);
    const switched = switchTarget(refused, "pitch");
    expect(shimOf(switched)).toBeCloseTo(shimOf(firstState), 9);
    expect(shownPlan(switched)?.refusal).toBeNull();
  });
});

describe("dragging", () => {
  test("the break moves the flat's length to whole figures, and drops what was typed there", () => {
    const typed = typeField(firstState, "dome.flatLength", "100.0");
    const dragged = dragBreak(typed, 387.3, "drag 1");
    expect(dragged.instrument.dome.flatLength).toBe(105);
    expect(shownText(dragged, "dome.flatLength")).toBe("105");
    expect(dragged.undoStep?.at).toBe("drag 1");
  });

  test("the shim becomes the target", () => {
    const dragged = dragTarget(firstState, "shim", 9.04, "drag 1");
    expect(dragged.instrument.target).toEqual({ kind: "shim", value: 9 });
    expect(shimOf(dragged)).toBeCloseTo(9, 9);
  });

  test("beyond reach it stays within, with a plan", () => {
    const dragged = dragTarget(firstState, "shim", 199, "drag 1");
    expect(solvedPlan(dragged.instrument).ok).toBe(true);
    const broken = dragBreak(firstState, 1, "drag 2");
    expect(solvedPlan(broken.instrument).ok).toBe(true);
  });

  test("an outcome steps from where it is", () => {
    const stepped = stepTarget(firstState, "shim", 1);
    const shim = readField(stepped.instrument, "target.value") ?? 0;
    expect(shim).toBeGreaterThan(shimOf(firstState));
    expect(shim - shimOf(firstState)).toBeLessThanOrEqual(0.1 + 1e-9);
  });
});

describe("opening", () => {
  test("takes a preset under an id of its own, and what was open can be put back with its texts", () => {
    const typed = typeField(firstState, "body.length", "abc");
    const opened = startFrom(rename(typed, "Mine"), preset("jumbo"), "new");
    expect(opened.instrument).toEqual({ ...preset("jumbo"), id: "new" });
    expect(shownText(opened, "body.length")).toBe("530");
    const back = reopenPrevious(opened);
    expect(back.instrument.name).toBe("Mine");
    expect(shownText(back, "body.length")).toBe("abc");
    expect(reopenPrevious(back).instrument.id).toBe("new");
  });
});

describe("braces arched as the dish", () => {
  const typing = (from: State, ...texts: readonly string[]): State =>
    texts.reduce((state, text) => recorded(state, typeField(state, "dome.dishRadius", text)), from);
  const radii = ({ instrument: { dome } }: State) => [dome.dishRadius, dome.braceRadius];

  test("go with it, stroke by stroke, to none and back", () => {
    const typed = typing(firstState, "2", "25", "25 ft");
    expect(radii(typed)).toEqual([7620, 7620]);
    const none = recorded(typed, setNone(typed, "dome.dishRadius", true));
    expect(radii(none)).toEqual([null, null]);
    expect(radii(setNone(none, "dome.dishRadius", false))).toEqual([7620, 7620]);
    const stepped = recorded(typed, stepField(typed, "dome.dishRadius", 1));
    expect(radii(stepped)).toEqual([7924.8, 7924.8]);
    expect(radii(undo(stepped))).toEqual([7620, 7620]);
  });

  test("stay once set apart, also where the dish passes by", () => {
    const apart = recorded(firstState, setField(firstState, "dome.braceRadius", 7620));
    expect(radii(typing(apart, "2", "25 ft", "25.5 ft"))).toEqual([7772.4, 7620]);
  });

  test("are left alone by a dish that cannot be, and go along again with the next that can", () => {
    const refused = typing(firstState, "1 mm");
    expect(radii(refused)).toEqual([1, 8534.4]);
    const trouble = fieldTrouble(refused, "dome.dishRadius");
    expect(trouble?.field).toBe("dome.dishRadius");
    const mended = setField(refused, "dome.dishRadius", trouble?.nearest ?? null);
    expect(solvedPlan(mended.instrument).ok).toBe(true);
    expect(radii(setField(refused, "dome.dishRadius", 9144))).toEqual([9144, 9144]);
  });
});

describe("where the flat is sanded", () => {
  test("changed, keeps the saddle asked for, and the file's version says so", () => {
    const seat = switchMethod(firstState, "seat");
    expect(seat.instrument.dome.method).toBe("seat");
    expect(seat.instrument.target).toEqual(firstState.instrument.target);
    expect(seat.instrument.version).toBe(2);
    expect(seat.lastGood).toBe(seat.instrument);
    const back = switchMethod(seat, "break");
    expect(back.instrument).toEqual(firstState.instrument);
    expect(switchMethod(back, "break")).toBe(back);
  });

  test("stated as a shim, it is the saddle that shim gives which is asked for", () => {
    const shim = switchTarget(firstState, "shim");
    const { target } = switchMethod(shim, "seat").instrument;
    expect(target.kind).toBe("saddleExposure");
    expect(target.value).toBeCloseTo(firstState.instrument.target.value, 9);
  });

  test("a variant that aimed for a shim aims for what its base does", () => {
    const shim = aimVariant(addVariant(firstState, "a"), "a", { kind: "shim", value: 7 });
    const pitch = aimVariant(addVariant(shim, "b"), "b", { kind: "pitch", value: 1.2 });
    const targets = switchMethod(pitch, "seat").comparison.variants.map(({ target }) => target);
    expect(targets).toEqual([undefined, { kind: "pitch", value: 1.2 }]);
  });

  test("a plate stated for the seat makes a file of version 2, and taken back one of version 1", () => {
    const thick = setField(firstState, "seat.topThickness", 3);
    expect(thick.instrument.version).toBe(2);
    expect(setField(thick, "seat.topThickness", 2.8).instrument.version).toBe(1);
  });
});
