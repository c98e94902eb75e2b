import { describe, expect, it } from "vitest";
import { emptyAsBuilt } from "../../../src/instrument/as-built/as-built.ts";
import {
  measurementField,
  measurementKeys,
  measurementsAt,
} from "../../../src/instrument/as-built/measurement-fields.ts";
import { readAsBuilt } from "../../../src/instrument/as-built/read-as-built.ts";
import { stepIds, stepNames } from "../../../src/instrument/as-built/steps.ts";

const whole = {
  format: "rimwright-as-built",
  version: 1,
  readings: { shim: { value: 8.1, date: "2026-05-14", note: "cherry" } },
  done: { level: "2026-05-10" },
  notes: { level: "mould was sprung" },
  taken: [
    {
      remedy: "bridge",
      date: "2026-05-20",
      changes: [{ path: "bridge.thickness", value: 8.6 }],
      offsets: { shim: 0, fretPlane: 0.1, stringHeight: 0, saddleExposure: 0 },
      replaced: { bridgeThickness: { value: 9, date: "2026-05-19", note: "" } },
    },
  ],
  strings: [{ note: "E4", unitWeight: null, diameter: 0.3048 }],
  finished: null,
};

describe("the door for as-built records", () => {
  it("takes a whole record back unchanged, by way of JSON", () => {
    const read = readAsBuilt(JSON.parse(JSON.stringify(whole)));
    expect(read).toEqual({ ok: true, asBuilt: whole });
  });

  it("takes an empty object for a record with nothing in it", () => {
    expect(readAsBuilt({})).toEqual({ ok: true, asBuilt: emptyAsBuilt });
  });

  it.each([
    [null, "", /this is null/],
    [[], "", /this is a list/],
    [{ format: "other" }, "format", /“other”/],
    [{ version: 2 }, "version", /must be 1; it is 2/],
    [
      { readings: { shim: { value: 999 } } },
      "readings.shim.value",
      /between 0 and 200 mm; it is 999/,
    ],
    [{ readings: { shim: { value: "8" } } }, "readings.shim.value", /“8”/],
    [{ readings: { colour: { value: 1 } } }, "readings.colour", /must be/],
    [{ readings: { shim: { value: 8, date: "today" } } }, "readings.shim.date", /“today”/],
    [{ done: { varnish: "2026-05-10" } }, "done.varnish", /must be/],
    [
      { taken: [{ ...whole.taken[0], changes: [{ path: "body.colour", value: 1 }] }] },
      "taken.0.changes.0.path",
      /“body.colour”/,
    ],
  ])("refuses %j, naming the place", (json, path, message) => {
    const read = readAsBuilt(json);
    if (read.ok) throw new Error("it was let in");
    expect(read.problems[0]?.path).toBe(path);
    expect(read.problems[0]?.message).toMatch(message);
  });

  it("never throws, whatever it is given", () => {
    for (const json of [undefined, 7, "x", { readings: [] }, { taken: {} }, { strings: [null] }])
      expect(readAsBuilt(json).ok).toBe(false);
  });
});

describe("the steps and what is measured at them", () => {
  it("names every step, and hands out every measurement at one of them, in the order of work", () => {
    expect(Object.keys(stepNames)).toEqual([...stepIds]);
    expect(stepIds.flatMap((id) => measurementsAt(id, "break"))).toEqual(measurementKeys);
  });

  it("gives every measurement limits and a way to measure it", () => {
    for (const key of measurementKeys) {
      const { min, max, label, howTo } = measurementField(key);
      expect(min).toBeLessThan(max);
      expect(label.length * howTo.length).toBeGreaterThan(0);
    }
  });
});
