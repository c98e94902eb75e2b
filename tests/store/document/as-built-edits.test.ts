import { describe, expect, it } from "vitest";
import {
  dateMeasurement,
  markStep,
  measurementText,
  noteMeasurement,
  noteStep,
  putMeasurement,
  readMeasurement,
  replaceRecord,
  stepMeasurement,
  typeMeasurement,
} from "../../../src/store/document/as-built-edits.ts";
import { firstState } from "../../../src/store/document/state.ts";

const day = "2026-05-14";
const later = "2026-05-20";
const mm = (text: string) => ({ text, units: "mm" }) as const;

describe("a measurement", () => {
  it("is what its text says, on the day it was first typed", () => {
    const typed = typeMeasurement(firstState, "shim", mm("8,2"), day);
    const again = typeMeasurement(typed, "shim", mm("8,25"), later);
    expect(again.asBuilt.readings.shim).toEqual({ value: 8.25, date: day, note: "" });
    expect(measurementText(again, "shim", "mm")).toBe("8,25");
  });

  it("keeps its last value and the text when the text cannot be read", () => {
    const good = typeMeasurement(firstState, "shim", mm("8.2"), day);
    const bad = typeMeasurement(good, "shim", mm("8.2x"), day);
    expect(bad.asBuilt.readings.shim?.value).toBe(8.2);
    expect(measurementText(bad, "shim", "mm")).toBe("8.2x");
    expect(readMeasurement("shim", mm("8.2x")).ok).toBe(false);
    expect(readMeasurement("shim", mm("999")).ok).toBe(false);
  });

  it("is gone when its text is emptied", () => {
    const good = typeMeasurement(firstState, "shim", mm("8.2"), day);
    expect(typeMeasurement(good, "shim", mm(" "), day).asBuilt.readings.shim).toBeUndefined();
  });

  it("is shown in the units chosen, without changing", () => {
    const good = typeMeasurement(firstState, "bridgeThickness", mm("9.525"), day);
    expect(measurementText(good, "bridgeThickness", "in")).toBe("0.375");
    expect(measurementText(good, "bridgeThickness", "mm")).toBe("9.525");
  });

  it("starts at what is expected when it is stepped, and goes on from there", () => {
    const first = stepMeasurement(firstState, "gapAfter", 1, 1.7195, "mm", day);
    expect(first.asBuilt.readings.gapAfter?.value).toBeCloseTo(1.7, 9);
    const next = stepMeasurement(first, "gapAfter", -2, 1.7195, "mm", day);
    expect(next.asBuilt.readings.gapAfter?.value).toBeCloseTo(1.6, 9);
  });

  it("takes a date and a note, but only once there is one", () => {
    const put = putMeasurement(firstState, "gapAfter", 1.7, "mm", day);
    const told = noteMeasurement(dateMeasurement(put, "gapAfter", later), "gapAfter", "damp");
    expect(told.asBuilt.readings.gapAfter).toEqual({ value: 1.7, date: later, note: "damp" });
    expect(dateMeasurement(firstState, "gapAfter", later)).toBe(firstState);
  });
});

describe("a step", () => {
  it("is done in any order, and reopened", () => {
    const done = markStep(markStep(firstState, "bridge", day), "level", later);
    expect(done.asBuilt.done).toEqual({ bridge: day, level: later });
    const reopened = markStep(done, "bridge", null);
    expect(reopened.asBuilt.done).toEqual({ level: later });
    expect(noteStep(done, "level", "sprung").asBuilt.notes.level).toBe("sprung");
  });
});

describe("a correction", () => {
  it("drops texts of readings a correction sets aside", () => {
    const typed = typeMeasurement(firstState, "shim", mm("8.2"), day);
    const { shim: _, ...readings } = typed.asBuilt.readings;
    const after = replaceRecord(typed, { ...typed.asBuilt, readings });
    expect(measurementText(after, "shim", "mm")).toBe("");
  });
});
