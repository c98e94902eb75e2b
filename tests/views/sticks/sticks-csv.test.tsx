import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { presets } from "../../../src/instrument/presets.ts";
import { readyForSticks } from "../../../src/profile/sticks/on-stick.ts";
import { stickWantsOf } from "../../../src/profile/sticks/wanted-stick.ts";
import { csvOf } from "../../../src/views/csv.ts";
import { stickRowsForCsv } from "../../../src/views/sticks/sticks-csv.ts";

const rows = presets.map((instrument) => ({
  instrument,
  model: null,
  on: readyForSticks(instrument, null)(8),
  wants: stickWantsOf(instrument, []),
}));

/** Read by csv-parse, as a spreadsheet would read it. */
const read = (units: "mm" | "in"): readonly Record<string, string>[] =>
  parse(csvOf(stickRowsForCsv(rows, units)), { columns: true, bom: true });

test("the sticks' table has each figure under its name and unit, in mm or inches", () => {
  const [metric, inch] = [read("mm"), read("in")];
  expect(metric).toHaveLength(presets.length);
  for (const [i, { instrument, on, wants }] of rows.entries()) {
    if (!on.ok || typeof wants.range === "string") throw new Error("no figures");
    const [mm, inches] = [metric[i], inch[i]];
    expect(mm?.["Instrument"]).toBe(instrument.name);
    expect(Number(mm?.["Pitch (°)"])).toBeCloseTo(on.on.pitch, 5);
    expect(Number(mm?.["Saddle exposed (mm)"])).toBeCloseTo(on.on.saddleExposure, 5);
    expect(Number(inches?.["Saddle exposed (in)"])).toBeCloseTo(on.on.saddleExposure / 25.4, 5);
    expect(Number(mm?.["Saddle exposed, least of the strings (mm)"])).toBeCloseTo(
      Math.min(...on.on.stringExposure),
      5,
    );
    expect(Number(mm?.["Stick wanted (mm)"])).toBeCloseTo(wants.wanted ?? Number.NaN, 5);
    expect(Number(mm?.["Serves from (mm)"])).toBeCloseTo(wants.range.low.shim, 5);
    expect(mm?.["Nearest of mine, thicker by (mm)"]).toBe("");
    const isServed = wants.range.low.shim <= 8 && 8 <= wants.range.high.shim;
    expect(mm?.["Served"]).toBe(isServed ? "yes" : "no");
  }
});
