import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import { presets } from "../../src/instrument/presets.ts";
import { readInstrument } from "../../src/instrument/read-instrument.ts";

const preset = (id: string) => presets.find((candidate) => candidate.id === id);

describe("the presets", () => {
  it("are at least six, the default instrument among them, each with an id and a name of its own", () => {
    expect(presets.length).toBeGreaterThanOrEqual(6);
    expect(presets).toContain(defaultInstrument);
    expect(new Set(presets.map(({ id }) => id)).size).toBe(presets.length);
    expect(new Set(presets.map(({ name }) => name)).size).toBe(presets.length);
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

  it.each(presets.map((each) => [each.id, each] as const))(
    "%s says that it is invented",
    (_, each) => {
      expect(each.notes).toMatch(/^Invented/);
    },
  );

  it.each(presets.map((each) => [each.id, each] as const))(
    "%s is what reading its own file gives",
    (_, each) => {
      expect(readInstrument(JSON.parse(JSON.stringify(each)))).toEqual({
        ok: true,
        instrument: each,
      });
    },
  );

  it.each(presets.map((each) => [each.id, each] as const))(
    "%s has its saddle on the dome, tailward of the blend, and its dish as wide as its rim",
    (_, { body, bridge, dome, neck }) => {
      // Equal temperament, exact: from the join fret to the saddle is scale / 2^(n/12) and the compensation.
      const saddle = body.length - neck.scale / 2 ** (neck.joinFret / 12) - bridge.compensation;
      expect(saddle).toBeGreaterThan(body.lowerBoutAt);
      expect(saddle).toBeLessThan(body.length - dome.flatLength - dome.blendLength);
      expect(dome.dishDiameter).toBeGreaterThan(body.lowerBoutWidth);
    },
  );

  it.each(presets.map((each) => [each.id, each] as const))(
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
});
