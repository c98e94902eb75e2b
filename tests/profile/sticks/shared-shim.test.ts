import { describe, expect, it, vi } from "vitest";
import { writeField } from "../../../src/instrument/field-value.ts";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { windowKinds } from "../../../src/instrument/outcome-fields.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { profileOf } from "../../../src/profile/profile.ts";
import { bestContact, sharedShimOf, withContact } from "../../../src/profile/sticks/shared-shim.ts";
import {
  changesFor,
  changesForShim,
  changesToShare,
} from "../../../src/profile/sticks/shared-shim-changes.ts";
import { shimRangeOf } from "../../../src/profile/sticks/shim-range.ts";
import { randomInstruments } from "../../support/random-instrument.ts";

vi.setConfig({ testTimeout: 60_000 });

/** Whether a shim serves, asked of the whole profile. */
function serves(instrument: Instrument, shim: number): boolean {
  const result = profileOf({ ...instrument, target: { kind: "shim", value: shim } });
  if (!result.ok || result.profile.overrunLength > 0) return false;
  return windowKinds.every((kind) => {
    const [low, high] = instrument.windows[kind];
    return result.profile[kind] >= low && result.profile[kind] <= high;
  });
}

const step = 0.02;
const fineGrid = Array.from({ length: 1001 }, (_, i) => i * step);

const [threeQuarter, parlour, orchestra, dreadnought, jumbo, courses] = presets as [
  Instrument,
  Instrument,
  Instrument,
  Instrument,
  Instrument,
  Instrument,
];

const wide = (instrument: Instrument): Instrument => ({
  ...instrument,
  windows: { ...instrument.windows, bridgeClearance: [0.1, 3], pitch: [0.4, 3] },
});

describe("the shims that serve one instrument", () => {
  const cases = [...presets, ...randomInstruments(10, 5).map(wide)];
  it.each(cases.map((one, i) => [`${i} ${one.name}`, one] as const))(
    "are those an exhaustive search finds, %s",
    (_, instrument) => {
      const served = fineGrid.filter((shim) => serves(instrument, shim));
      const range = shimRangeOf(instrument);
      if (typeof range === "string") {
        expect(served).toEqual([]);
        return;
      }
      const inside = fineGrid.filter((s) => s >= range.low.shim && s <= range.high.shim);
      expect(served).toEqual(inside);
      expect(range.high.shim - (served.at(-1) ?? 0)).toBeLessThan(step);
      expect((served[0] ?? 0) - range.low.shim).toBeLessThan(step);
    },
  );

  it("end exactly at a window's edge", () => {
    const range = shimRangeOf(orchestra);
    if (typeof range === "string") throw new Error(range);
    for (const [limit, end] of [
      [range.low, 0],
      [range.high, 1],
    ] as const) {
      const at = profileOf({ ...orchestra, target: { kind: "shim", value: limit.shim } });
      if (!at.ok || limit.by === "overrun" || limit.by === "reach") throw new Error("no window");
      expect(at.profile[limit.by]).toBeCloseTo(orchestra.windows[limit.by][end], 10);
    }
  });

  it("are limited by the break angle where that window is the narrow one", () => {
    const steep: Instrument = {
      ...orchestra,
      windows: { ...orchestra.windows, breakAngle: [27, 28] },
    };
    const range = shimRangeOf(steep);
    if (typeof range === "string") throw new Error(range);
    expect([range.low.by, range.high.by]).toEqual(["breakAngle", "breakAngle"]);
    const at = profileOf({ ...steep, target: { kind: "shim", value: range.low.shim } });
    expect(at.ok && at.profile.breakAngle).toBeCloseTo(27, 9);
  });
});

describe("one shim for several", () => {
  it("is the one an exhaustive search finds, with the most room", () => {
    const members = [orchestra, dreadnought, courses];
    const { shared, limits } = sharedShimOf(members, null);
    if (shared === null) throw new Error("nothing serves");
    const served = fineGrid.filter((shim) => members.every((one) => serves(one, shim)));
    const [low, high] = [served[0] ?? 0, served.at(-1) ?? 0];
    expect(Math.abs(shared.low - low)).toBeLessThan(step);
    expect(Math.abs(shared.high - high)).toBeLessThan(step);
    expect(Math.abs(shared.shim - (low + high) / 2)).toBeLessThan(step);
    expect(Math.abs(shared.room - (high - low) / 2)).toBeLessThan(step);
    expect(limits).toEqual([1, 0]);
  });

  it("has no room left at either end", () => {
    const { shared } = sharedShimOf([orchestra, jumbo], null);
    if (shared === null) throw new Error("nothing serves");
    const both = (shim: number): boolean => serves(orchestra, shim) && serves(jumbo, shim);
    expect(both(shared.shim + shared.room - 1e-7)).toBe(true);
    expect(both(shared.shim + shared.room + 1e-7)).toBe(false);
    expect(both(shared.shim - shared.room + 1e-7)).toBe(true);
    expect(both(shared.shim - shared.room - 1e-7)).toBe(false);
  });

  it("has the contact that leaves the most room on a fine grid of contacts", () => {
    const members = [orchestra, { ...jumbo, shim: { contact: 5, tailBlockDepth: 30 } }, courses];
    const best = bestContact(members, 10);
    const roomAt = (contact: number): number =>
      sharedShimOf(
        members.map((one) => withContact(one, contact)),
        null,
      ).shared?.room ?? -1;
    const rooms = Array.from({ length: 101 }, (_, i) => roomAt(10 + i / 10));
    const most = Math.max(...rooms);
    expect(best.contact).toBeGreaterThanOrEqual(10);
    expect(best.contact).toBeLessThanOrEqual(20);
    expect(best.shared?.room ?? 0).toBeGreaterThanOrEqual(most - 1e-9);
  });

  it("is a stick with a width: no narrower than stated, and no wider than the shallowest block", () => {
    const members = [orchestra, dreadnought, courses];
    const free = bestContact(members, 0);
    for (const least of [5, 10, 15]) {
      const { contact } = bestContact(members, least);
      expect(contact).toBeGreaterThanOrEqual(least);
      expect(contact).toBeLessThanOrEqual(20);
      // Room only falls as the stick is held from being as narrow as it would be best.
      expect(contact).toBeCloseTo(Math.max(least, free.contact ?? Number.NaN), 3);
    }
    expect(bestContact(members, 30).contact).toBe(20);
  });

  it("is none for nobody", () => {
    expect(sharedShimOf([], null).shared).toBeNull();
    expect(bestContact([], 10).shared).toBeNull();
  });
});

describe("when no shim serves all", () => {
  // Builders who will have the frets well clear of the bridge leave the shims less to share.
  const wellClear = (one: Instrument): Instrument =>
    writeField(one, "windows.bridgeClearance.0", 0.4);
  const members = [threeQuarter, orchestra, dreadnought].map(wellClear);

  it("the least change found is the least an exhaustive search finds", () => {
    const sharedShim = sharedShimOf(members, null);
    expect(sharedShim.shared).toBeNull();
    const [least] = changesToShare(sharedShim);
    if (least === undefined) throw new Error("no change");
    const works = (member: number, field: typeof least.field, to: number): boolean =>
      sharedShimOf(
        members.map((one, i) => (i === member ? writeField(one, field, to) : one)),
        null,
      ).shared !== null;
    expect(works(least.member, least.field, least.to)).toBe(true);
    const change = Math.abs(least.to - least.from);
    // Every member and field, both ways, in steps of a hundredth: nothing smaller works.
    for (const [member, one] of members.entries())
      for (const field of [
        "bridge.thickness",
        "neck.fingerboardThickness",
        "dome.flatLength",
      ] as const) {
        const [group, key] = field.split(".") as ["bridge", "thickness"];
        const own = one[group][key];
        for (let off = 0.01; off < change - 1e-6; off += 0.01)
          for (const way of [1, -1]) expect(works(member, field, own + way * off)).toBe(false);
      }
  });

  it("says so when no single change is enough", () => {
    expect(changesToShare(sharedShimOf(presets.map(wellClear), null))).toEqual([]);
  });
});

describe("the shim at hand", () => {
  it("needs nothing where it serves, and else a change that just makes it serve", () => {
    const sharedShim = sharedShimOf([orchestra, threeQuarter, parlour], null);
    const changes = changesForShim(sharedShim, 9);
    expect(changes[0]).toEqual([]);
    expect(changes[1]?.length).toBeGreaterThan(0);
    for (const [member, list] of changes.entries())
      for (const { field, from, to } of list) {
        const own = sharedShim.members[member]?.instrument ?? orchestra;
        const past = (more: number): boolean =>
          serves(writeField(own, field, to + Math.sign(to - from) * more), 9);
        expect(past(1e-8)).toBe(true);
        expect(past(-1e-8)).toBe(false);
      }
  });

  it("stands the least change first", () => {
    const changes = changesFor(threeQuarter, [10, 10]).map(({ from, to }) => Math.abs(to - from));
    expect(changes.length).toBeGreaterThan(1);
    expect(changes).toEqual([...changes].sort((a, b) => a - b));
  });
});
