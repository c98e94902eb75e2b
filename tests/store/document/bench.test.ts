import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../../src/instrument/schema.ts";
import {
  dateMeasurement,
  finish,
  markStep,
  measurementText,
  noteMeasurement,
  noteStep,
  putMeasurement,
  readMeasurement,
  replaceRecord,
  setStrings,
  stepMeasurement,
  typeMeasurement,
  unfinish,
} from "../../../src/store/document/as-built-edits.ts";
import {
  firstBench,
  firstShop,
  learntFromOn,
  recordOn,
} from "../../../src/store/document/bench.ts";
import { makeBenchStore, readShop } from "../../../src/store/document/bench-keep.ts";
import { firstState, workOn } from "../../../src/store/document/state.ts";
import { makeStore } from "../../../src/store/document/store.ts";
import { keep, recall } from "../../../src/store/shelf/keep.ts";
import { memoryKeeper } from "../desk.ts";

const id = "one";
const day = "2026-05-14";
const later = "2026-05-20";
const mm = (text: string) => ({ text, units: "mm" }) as const;

describe("a measurement", () => {
  it("is what its text says, on the day it was first typed", () => {
    const typed = typeMeasurement(firstBench, id, "shim", mm("8,2"), day);
    const again = typeMeasurement(typed, id, "shim", mm("8,25"), later);
    expect(recordOn(again, id).readings.shim).toEqual({ value: 8.25, date: day, note: "" });
    expect(measurementText(again, id, "shim", "mm")).toBe("8,25");
  });

  it("keeps its last value and the text when the text cannot be read", () => {
    const good = typeMeasurement(firstBench, id, "shim", mm("8.2"), day);
    const bad = typeMeasurement(good, id, "shim", mm("8.2x"), day);
    expect(recordOn(bad, id).readings.shim?.value).toBe(8.2);
    expect(measurementText(bad, id, "shim", "mm")).toBe("8.2x");
    expect(readMeasurement("shim", mm("8.2x")).ok).toBe(false);
    expect(readMeasurement("shim", mm("999")).ok).toBe(false);
  });

  it("is gone when its text is emptied", () => {
    const good = typeMeasurement(firstBench, id, "shim", mm("8.2"), day);
    expect(
      recordOn(typeMeasurement(good, id, "shim", mm(" "), day), id).readings.shim,
    ).toBeUndefined();
  });

  it("is shown in the units chosen, without changing", () => {
    const good = typeMeasurement(firstBench, id, "bridgeThickness", mm("9.525"), day);
    expect(measurementText(good, id, "bridgeThickness", "in")).toBe("0.375");
    expect(measurementText(good, id, "bridgeThickness", "mm")).toBe("9.525");
  });

  it("starts at what is expected when it is stepped, and goes on from there", () => {
    const first = stepMeasurement(firstBench, id, "gapAfter", 1, 1.7195, "mm", day);
    expect(recordOn(first, id).readings.gapAfter?.value).toBeCloseTo(1.7, 9);
    const next = stepMeasurement(first, id, "gapAfter", -2, 1.7195, "mm", day);
    expect(recordOn(next, id).readings.gapAfter?.value).toBeCloseTo(1.6, 9);
  });

  it("takes a date and a note, but only once there is one", () => {
    const put = putMeasurement(firstBench, id, "gapAfter", 1.7, "mm", day);
    const told = noteMeasurement(
      dateMeasurement(put, id, "gapAfter", later),
      id,
      "gapAfter",
      "damp",
    );
    expect(recordOn(told, id).readings.gapAfter).toEqual({ value: 1.7, date: later, note: "damp" });
    expect(dateMeasurement(firstBench, id, "gapAfter", later)).toEqual({
      ...firstBench,
      records: { [id]: recordOn(firstBench, id) },
    });
  });
});

describe("a step", () => {
  it("is done in any order, and reopened", () => {
    const done = markStep(markStep(firstBench, id, "bridge", day), id, "level", later);
    expect(recordOn(done, id).done).toEqual({ bridge: day, level: later });
    const reopened = markStep(done, id, "bridge", null);
    expect(recordOn(reopened, id).done).toEqual({ level: later });
    expect(recordOn(noteStep(done, id, "level", "sprung"), id).notes.level).toBe("sprung");
  });
});

describe("what is learnt from", () => {
  it("takes in an instrument when it is finished, once, and lets it go again", () => {
    const instrument = { ...defaultInstrument, id };
    const measured = putMeasurement(firstBench, id, "gapAfter", 1.6, "mm", day);
    const twice = finish(finish(measured, instrument, day), instrument, later);
    expect(twice.finished).toHaveLength(1);
    expect(twice.finished[0]?.asBuilt.finished).toBe(later);
    expect(learntFromOn(twice).filter(({ invented }) => !invented)).toHaveLength(1);
    expect(unfinish(twice, id).finished).toEqual([]);
    expect(recordOn(unfinish(twice, id), id).readings.gapAfter?.value).toBe(1.6);
  });

  it("leaves the invented shelf out in one act", () => {
    expect(learntFromOn(firstBench).length).toBeGreaterThanOrEqual(4);
    expect(learntFromOn({ ...firstBench, demo: false })).toEqual([]);
  });
});

describe("what is kept between visits", () => {
  it("is all of it, through the doors", () => {
    const keeper = memoryKeeper();
    const page = makeStore({ ...firstState, ...workOn({ ...defaultInstrument, id }) });
    const store = makeBenchStore(keeper, page);
    store.setState((bench) => typeMeasurement(bench, id, "shim", mm("8 1/x"), day));
    store.setState((bench) => typeMeasurement(bench, id, "contact", mm("21"), day));
    store.setState((bench) => markStep(bench, id, "shim", day));
    store.setState((bench) =>
      setStrings(bench, id, [{ note: "E4", unitWeight: null, diameter: 0.3 }]),
    );
    store.setState((bench) => finish(bench, { ...defaultInstrument, id }, later));
    store.setState((bench) => ({
      ...bench,
      step: "gap",
      panel: "corrections",
      goal: "stringHeight",
      shares: { bridge: 0.5 },
      demo: false,
    }));
    keep(keeper, page.getState());
    expect(makeBenchStore(keeper, makeStore(recall(keeper))).getState()).toEqual(store.getState());
    expect(recordOn(store.getState(), id).done.shim).toBe(day);
    expect(store.getState().finished).toHaveLength(1);
  });

  it("is the first bench where nothing can be read, and never throws", () => {
    for (const json of [
      null,
      7,
      [],
      { records: 3, texts: [], finished: [{}], step: "x", shares: 1 },
    ])
      expect(readShop(json)).toEqual(firstShop);
    const refusing = {
      getItem: () => "{",
      setItem: () => {
        throw new Error("full");
      },
    };
    const store = makeBenchStore(refusing);
    store.setState((bench) => ({ ...bench, demo: false }));
    expect(store.getState().demo).toBe(false);
  });

  it("drops texts of measurements a correction sets aside", () => {
    const typed = typeMeasurement(firstBench, id, "shim", mm("8.2"), day);
    const { shim: _, ...readings } = recordOn(typed, id).readings;
    const after = replaceRecord(typed, id, { ...recordOn(typed, id), readings });
    expect(measurementText(after, id, "shim", "mm")).toBe("");
  });
});
