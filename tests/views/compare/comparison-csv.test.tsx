import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import type { FieldPath } from "../../../src/instrument/fields.ts";
import type { Units } from "../../../src/instrument/length.ts";
import { type Variant, variantInstrument } from "../../../src/profile/comparison/variant.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { comparisonRows } from "../../../src/views/compare/comparison-csv.ts";
import type { Compared } from "../../../src/views/compare/use-comparison.ts";
import { csvOf, tabSeparated } from "../../../src/views/csv.ts";

const column = (variant: Variant | null): Compared => {
  const instrument =
    variant === null ? defaultInstrument : variantInstrument(defaultInstrument, variant);
  return {
    variant,
    name: variant?.name ?? "Base",
    instrument,
    plan: profileOf(instrument),
  };
};

const thinBridge: Variant = { id: "a", name: "Thin, “pearl”", changes: { "bridge.thickness": 8 } };
const steep: Variant = {
  id: "b",
  name: "Steep",
  changes: { "dome.dishRadius": null },
  target: { kind: "pitch", value: 1.6 },
};
const paths: readonly FieldPath[] = ["dome.dishRadius", "bridge.thickness"];

const table = (variants: readonly Variant[], units: Units): readonly (readonly string[])[] =>
  parse(csvOf(comparisonRows([column(null), ...variants.map(column)], paths, units)), {
    bom: true,
    record_delimiter: "\r\n",
  });

const row = (rows: readonly (readonly string[])[], heading: string): readonly string[] => {
  const found = rows.filter(([first]) => first === heading);
  expect(found.map(([first]) => first)).toEqual([heading]);
  return found[0] ?? [];
};

describe("the comparison as comma-separated values", () => {
  test("opens with the mark of UTF-8, once", () => {
    const csv = csvOf(comparisonRows([column(null)], [], "mm"));
    expect([...csv.matchAll(/\uFEFF/g)].map(({ index }) => index)).toEqual([0]);
  });

  test("names each column, and says what it aims for", () => {
    const rows = table([thinBridge, steep], "mm");
    expect(rows[0]).toEqual([
      "",
      ...["Base", "Base: window"],
      ...["Thin, “pearl”", "Thin, “pearl”: window", "Thin, “pearl”: difference from the base"],
      ...["Steep", "Steep: window", "Steep: difference from the base"],
    ]);
    const aims = row(rows, "Aims for");
    expect([aims[1], aims[3], aims[6]]).toEqual([
      "Saddle exposed (mm)",
      "Saddle exposed (mm)",
      "Pitch (°)",
    ]);
    const values = row(rows, "Target value");
    expect([values[1], values[3], values[6]].map(Number)).toEqual([
      defaultInstrument.target.value,
      defaultInstrument.target.value,
      1.6,
    ]);
  });

  test.each([
    ["mm", "mm", 1],
    ["in", "in", 25.4],
    ["in-fraction", "in", 25.4],
  ] as const)("gives lengths in %s as decimals, the unit in the heading", (units, unit, size) => {
    const rows = table([thinBridge, steep], units);
    const bridge = row(rows, `Bridge thickness (${unit})`);
    expect(Number(bridge[3])).toBeCloseTo(8 / size, 6);
    const profile = column(thinBridge).plan;
    const base = column(null).plan;
    if (!profile.ok || !base.ok) throw new Error("no plan");
    const shim = row(rows, `Shim (${unit})`);
    expect(Number(shim[3])).toBeCloseTo((profile.profile.shim ?? Number.NaN) / size, 5);
    const difference = (profile.profile.shim ?? Number.NaN) - (base.profile.shim ?? Number.NaN);
    expect(difference).toBeLessThan(0);
    expect(Number(shim[5])).toBeCloseTo(difference / size, 5);
  });

  test("writes every outcome as a number that any program reads, or leaves it out", () => {
    const rows = table([thinBridge, steep], "mm").slice(5);
    expect(rows.length).toBeGreaterThan(10);
    const figures = rows.flatMap((cells) => [1, 3, 5, 6, 8].map((at) => cells[at] ?? ""));
    for (const figure of figures) expect(figure).toMatch(/^(-?\d+(\.\d+)?(e-\d+)?)?$/);
    expect(figures.filter((figure) => figure.startsWith("-")).length).toBeGreaterThan(0);
  });

  test("says how each stands to its window by words that are no unit", () => {
    const outside: Variant = { ...steep, target: { kind: "pitch", value: 4 } };
    const rows = table([thinBridge, outside], "in").slice(5);
    const words = new Set(rows.flatMap((cells) => [2, 4, 7].map((at) => cells[at])));
    expect(
      [...words].filter((word) => !["", "within", "close", "outside"].includes(word ?? "")),
    ).toEqual([]);
    expect(words).toContain("within");
    expect(words).toContain("outside");
  });

  test("a field without a number keeps its own word", () => {
    expect(row(table([steep], "mm"), "Dish radius (mm)")[3]).toMatch(/^[a-z ]+$/);
  });

  test.each(["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx"])(
    "%j as a name is text to a spreadsheet",
    (name) => {
      const [head = []] = table([{ ...thinBridge, name }], "mm");
      expect(head[3]).toBe(`'${name}`);
      const pasted = tabSeparated(comparisonRows([column({ ...thinBridge, name })], [], "mm"));
      expect(pasted.split("\n")[0]?.split("\t")[1]).toMatch(/^'/);
    },
  );

  test.each(['say "when"', "a, b", "two\r\nlines", "ünïcødé 木"])("%j comes back whole", (name) => {
    expect(table([{ ...thinBridge, name }], "mm")[0]?.[3]).toBe(name);
  });

  test("pasted, every row has as many columns as the first", () => {
    const lines = tabSeparated(
      comparisonRows([column(null), column({ ...thinBridge, name: "a\tb\nc" })], paths, "mm"),
    ).split("\n");
    expect(new Set(lines.map((line) => line.split("\t").length))).toEqual(new Set([6]));
  });
});
