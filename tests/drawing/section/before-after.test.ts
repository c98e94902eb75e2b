import { describe, expect, it } from "vitest";
import type { Scene } from "../../../src/drawing/scene.ts";
import { beforeAfter } from "../../../src/drawing/section/before-after.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { correctionOf } from "../../../src/profile/bench/correction.ts";
import { madeAfter } from "../../../src/profile/bench/made-instrument.ts";
import { outlookFrom, recordOf } from "../../support/bench-record.ts";
import { letteringFaults, pathsOf } from "../../support/read-scene.ts";

const say = (mm: number): string => `${mm.toFixed(2)} mm`;

/** Every drawing of a remedy for a gap that came out low or high, at two widths. */
function drawings(): readonly (readonly [string, Scene])[] {
  return presets.flatMap((instrument) =>
    [-0.5, 0.5].flatMap((off) => {
      const { flatGap } = outlookFrom(instrument, recordOf({})).heights;
      const record = recordOf({ gapBefore: flatGap + off }, ["flat"]);
      const outlook = outlookFrom(instrument, record);
      return correctionOf(outlook, record, "saddleExposure").remedies.flatMap((one) => {
        if (!one.ok) return [];
        const after = madeAfter(outlook, one.remedy.changes);
        if (!after.ok) throw new Error(one.remedy.id);
        return [340, 1100].map((width) => {
          const options = { width, height: 300, length: say };
          const name = `${instrument.id} ${one.remedy.id} ${width}`;
          return [name, beforeAfter(outlook, after.made, options)] as const;
        });
      });
    }),
  );
}

const pathOfRole = (scene: Scene, group: string, role: string): string => {
  const found = scene.shapes.find((shape) => shape.role === group);
  const path = found?.kind === "group" ? found.shapes.find((shape) => shape.role === role) : null;
  return path?.kind === "path" ? path.d : "";
};

describe("before and after", () => {
  const all = drawings();

  it("draws every remedy with numbers only, its texts on the sheet and apart", () => {
    expect(all.length).toBeGreaterThan(60);
    for (const [name, scene] of all) {
      expect(letteringFaults(scene), name).toEqual([]);
      for (const { d } of pathsOf(scene)) expect(d, name).not.toMatch(/NaN|Infinity/);
    }
  });

  it("shows both as they are: what does not move lies on itself, what moves does not", () => {
    const { flatGap } = outlookFrom(defaultInstrument, recordOf({})).heights;
    const record = recordOf({ gapAfter: flatGap - 0.5 }, ["gap"]);
    const outlook = outlookFrom(defaultInstrument, record);
    const bridge = correctionOf(outlook, record, "saddleExposure").remedies.find(
      (one) => one.ok && one.remedy.id === "bridge",
    );
    const after = bridge?.ok ? madeAfter(outlook, bridge.remedy.changes) : null;
    if (!after?.ok) throw new Error("no bridge");
    const scene = beforeAfter(outlook, after.made, { width: 700, height: 300, length: say });
    expect(pathOfRole(scene, "before", "top")).toBe(pathOfRole(scene, "after", "top"));
    expect(pathOfRole(scene, "before", "string")).toBe(pathOfRole(scene, "after", "string"));
    expect(pathOfRole(scene, "before", "bridge")).not.toBe(pathOfRole(scene, "after", "bridge"));
    // A bridge half a millimetre thinner stands that much of its own height lower.
    const tall = (group: string): number => {
      const ys =
        pathOfRole(scene, group, "bridge")
          .match(/(?<=,)[\d.]+/g)
          ?.map(Number) ?? [];
      return Math.max(...ys) - Math.min(...ys);
    };
    const { thickness } = defaultInstrument.bridge;
    expect(tall("after") / tall("before")).toBeCloseTo((thickness - 0.5) / thickness, 2);
    expect(scene.title).toContain("2.90 mm before and 3.40 mm after");
  });
});
