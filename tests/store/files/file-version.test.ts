import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { fileForm } from "../../../src/instrument/file-form.ts";
import { readInstrument } from "../../../src/instrument/read-instrument.ts";
import { openAddress, readShareText } from "../../../src/store/files/share.ts";
import { sharedIn } from "../../../src/store/files/shared-address.ts";
import { onSeat } from "../../support/solved.ts";

const { seat } = defaultInstrument;

describe("an instrument's file", () => {
  test("of what version 1 had says version 1, and holds no name that it did not have", () => {
    const form = fileForm(defaultInstrument);
    expect(form.version).toBe(1);
    expect(form).not.toHaveProperty("seat");
    expect(form.dome).not.toHaveProperty("method");
    expect(readInstrument(JSON.parse(JSON.stringify(form)))).toEqual({
      ok: true,
      instrument: defaultInstrument,
    });
  });

  test.each([
    ["another method", onSeat(defaultInstrument)],
    ["another plate", { ...defaultInstrument, seat: { ...seat, topThickness: 3 } }],
    ["how closely a plate is held", { ...defaultInstrument, tolerances: { "seat.leastCut": 0.1 } }],
  ])("with %s says version 2, and comes back the same", (_, instrument) => {
    const form = fileForm(instrument);
    expect(form.version).toBe(2);
    expect(readInstrument(JSON.parse(JSON.stringify(form)))).toEqual({
      ok: true,
      instrument: { ...instrument, version: 2 },
    });
  });

  test("refuses a target of the other method, and says which there are", () => {
    const wrong = readInstrument({ dome: { method: "seat" }, target: { kind: "shim" } });
    expect(wrong.ok || wrong.problems[0]?.path).toBe("target.kind");
    expect(wrong.ok || wrong.problems[0]?.message).toContain("spacer");
    const other = readInstrument({ target: { kind: "spacer", value: 2 } });
    expect(other.ok || other.problems[0]?.path).toBe("target.kind");
    const unknown = readInstrument({ dome: { method: "glue" } });
    expect(unknown.ok || unknown.problems[0]?.message).toContain("one of break, seat");
  });

  test("as an address opens the same", async () => {
    const instrument = { ...onSeat(defaultInstrument), version: 2 } as const;
    const address = await openAddress(instrument, "https://example.org/");
    const text = sharedIn(new URL(address).hash);
    expect(await readShareText(text ?? "")).toEqual({ ok: true, instrument });
  });
});
