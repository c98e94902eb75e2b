import { describe, expect, it } from "vitest";
import { cutawayPresets } from "../../src/instrument/cutaway-presets.ts";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { windowKinds } from "../../src/instrument/outcome-fields.ts";
import { presets } from "../../src/instrument/presets.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";
import { profileOf } from "../../src/profile/profile.ts";

const preset = (id: string) => presets.find((candidate) => candidate.id === id);

const all = [...presets, ...cutawayPresets];
const named = all.map((each) => [each.id, each] as const);

describe("the presets", () => {
  it("are at least six, the default instrument among them, each with an id and a name of its own", () => {
    expect(presets.length).toBeGreaterThanOrEqual(6);
    expect(presets).toContain(defaultInstrument);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
  });

  it("join the body at fret 12 and at fret 14, and one has eight strings", () => {
    const joins = presets.map(({ neck }) => neck.joinFret);
    expect(joins).toContain(12);
    expect(joins).toContain(14);
    expect(presets.map(({ strings }) => strings.count)).toContain(8);
  });

  it("have the dreadnought size as it is commonly given", () => {
    // Length 508, lower bout 397, tail depth 124 mm: danlovesguitars.com/2015/03/, on guitar sizes.
    const { body } = preset("dreadnought-size") ?? defaultInstrument;
    expect([body.length, body.lowerBoutWidth, body.depthTail]).toEqual([508, 397, 124]);
  });

  it.each(named)("%s says that it is invented", (_, each) => {
    expect(each.notes).toMatch(/^Invented/);
  });

  it.each(named)("%s is what reading its own file gives", (_, each) => {
    expect(readInstrument(JSON.parse(JSON.stringify(each)))).toEqual({
      ok: true,
      instrument: each,
    });
  });

  it.each(named)(
    "%s has its saddle on the dome, tailward of the blend, and its dish as wide as its rim",
    (_, { body, bridge, dome, neck }) => {
      // Equal temperament, exact: from the join fret to the saddle is scale / 2^(n/12) and the compensation.
      const saddle = body.length - neck.scale / 2 ** (neck.joinFret / 12) - bridge.compensation;
      expect(saddle).toBeGreaterThan(body.lowerBoutAt);
      expect(saddle).toBeLessThan(body.length - dome.flatLength - dome.blendLength);
      expect(dome.dishDiameter).toBeGreaterThan(body.lowerBoutWidth);
    },
  );

  it.each(named)(
    "%s has its soundhole clear of the fingerboard's end and of the bridge",
    (_, { body, neck, bridge }) => {
      const pastJoin = neck.scale * (2 ** (-neck.joinFret / 12) - 2 ** (-neck.lastFret / 12));
      const fingerboardEnd = body.length - pastJoin - neck.fingerboardOverhang;
      const saddle = body.length - neck.scale / 2 ** (neck.joinFret / 12) - bridge.compensation;
      const radius = body.soundholeDiameter / 2;
      expect(body.soundholeAt + radius).toBeLessThan(fingerboardEnd);
      expect(body.soundholeAt - radius).toBeGreaterThan(saddle + 20);
    },
  );

  it.each(named)(
    "%s can be built: a shim of 6 to 10 mm, every outcome in its window, and nothing to warn of",
    (_, each) => {
      // "Some 7–8 mm" at orchestra size, and usable from three-quarter to jumbo: common practice, no source.
      const result = profileOf(each);
      if (!result.ok) throw new Error(JSON.stringify(result.refusal));
      const { profile } = result;
      expect(profile.shim).toBeGreaterThan(6);
      expect(profile.shim).toBeLessThan(10);
      for (const kind of windowKinds) {
        expect(profile[kind]).toBeGreaterThanOrEqual(each.windows[kind][0]);
        expect(profile[kind]).toBeLessThanOrEqual(each.windows[kind][1]);
      }
      expect(profile.checks.filter(({ grade }) => grade !== "note")).toEqual([]);
    },
  );
});
