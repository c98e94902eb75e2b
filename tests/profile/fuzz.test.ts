import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { writeField } from "../../src/instrument/field-value.ts";
import { fieldAt, isFieldPath } from "../../src/instrument/fields.ts";
import type { Instrument } from "../../src/instrument/instrument.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import type { Refusal } from "../../src/profile/outcome.ts";
import { profileOf } from "../../src/profile/profile.ts";
import { anyInstrument } from "./any-instrument.ts";

fc.configureGlobal({ seed: 20261125 });

/** Path of the first number anywhere in it that is not finite. */
function notFinite(node: unknown, path: string): string | null {
  if (typeof node === "number") return Number.isFinite(node) ? null : `${path} is ${node}`;
  if (typeof node !== "object" || node === null) return null;
  for (const [key, value] of Object.entries(node)) {
    const found = notFinite(value, `${path}.${key}`);
    if (found !== null) return found;
  }
  return null;
}

/**
 * A nearest value that is given works when put in. One case cannot promise it: a target's is known
 * from the reach alone, and only with it in place is there a tail drop for the back to hang on. Then
 * the back may object in its turn, and its own nearest value works.
 */
function expectOfferWorks(instrument: Instrument, { field, nearest }: Refusal): void {
  if (nearest === null) return;
  const offered = writeField(instrument, field, nearest);
  expect(readInstrument(offered).ok).toBe(true);
  const again = profileOf(offered);
  if (again.ok) return;
  expect([field, again.refusal.field]).toEqual(["target.value", "body.backRadius"]);
  expectOfferWorks(offered, again.refusal);
}

function expectRefusal(instrument: Instrument, refusal: Refusal): void {
  const { field, why, nearest } = refusal;
  expect(isFieldPath(field)).toBe(true);
  expect(why.length).toBeGreaterThan(0);
  if (nearest !== null) {
    const { min, max } = fieldAt(field, instrument.target.kind);
    expect(nearest).toBeGreaterThanOrEqual(min);
    expect(nearest).toBeLessThanOrEqual(max);
  }
  expectOfferWorks(instrument, refusal);
}

describe("twenty thousand instruments over all that a file can hold", { timeout: 300_000 }, () => {
  const tally = new Map<string, number>();
  const count = (what: string): void => {
    tally.set(what, (tally.get(what) ?? 0) + 1);
  };

  it("have a profile of finite numbers or a refusal that names a field; what it offers works", () => {
    fc.assert(
      fc.property(anyInstrument, (instrument) => {
        const result = profileOf(instrument);
        expect(notFinite(result, "result")).toBeNull();
        if (!result.ok) expectRefusal(instrument, result.refusal);
        count(result.ok ? "solved" : result.refusal.field);
      }),
      { numRuns: 20_000 },
    );
  });

  it("were not all of one kind: thousands solved, and every refusal there is was met", () => {
    expect(tally.get("solved")).toBeGreaterThan(5000);
    const fields = [
      "dome.flatLength",
      "dome.dishRadius",
      "dome.braceRadius",
      "shim.contact",
      "neck.scale",
      "neck.fingerboardRadius",
      "body.backRadius",
      "target.value",
    ];
    for (const field of fields) expect(tally.get(field), field).toBeGreaterThan(20);
    expect([...tally.keys()].sort()).toEqual(["solved", ...fields].sort());
  });
});
