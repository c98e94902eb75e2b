import { describe, expect, it } from "vitest";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { serves, shimRangeOf } from "../../../src/profile/sticks/shim-range.ts";
import { stickPlanOf } from "../../../src/profile/sticks/stick-plan.ts";
import { stickWantsOf } from "../../../src/profile/sticks/wanted-stick.ts";

const [first] = presets as [Instrument];
const seat: Instrument = { ...first, dome: { ...first.dome, method: "seat" } };
const crossed: Instrument = {
  ...first,
  windows: { ...first.windows, bridgeClearance: [3, 3.5], pitch: [0, 0.4] },
};

describe("which sticks a shop would do well to have", () => {
  // Those that no stick serves stand among the others, so that places are told apart.
  const shop = [seat, ...presets, crossed];
  const owned = [{ thickness: 7.5, width: null }];
  const wants = shop.map((one) => stickWantsOf(one, owned));
  const plan = stickPlanOf(wants);
  const isServed = (i: number, thickness: number): boolean =>
    serves(shimRangeOf(shop[i] ?? first), thickness);

  it("names members and limits by their places in the shop, and each is served", () => {
    for (const set of [plan.fewest, ...plan.best, plan.oneMore ? [plan.oneMore] : []]) {
      for (const { members, limits, thickness, room } of set) {
        for (const member of members) expect(isServed(member, thickness)).toBe(true);
        expect(isServed(limits[0], thickness - room - 1e-6)).toBe(false);
        expect(isServed(limits[1], thickness + room + 1e-6)).toBe(false);
      }
    }
  });

  it("serves with the fewest all that any stick serves, and counts the rest by why", () => {
    const members = plan.fewest.flatMap(({ members }) => members).toSorted((a, b) => a - b);
    expect(members).toEqual(presets.map((_, i) => i + 1));
    expect(plan.without).toEqual({ "no-stick": 1, "no-plan": 0, "none-serves": 1 });
  });

  it("adds a stick for those that the owned ones leave out only", () => {
    const left = wants.flatMap(({ nearest, range }, i) =>
      typeof range !== "string" && nearest?.serves !== true ? [i] : [],
    );
    expect(left.length).toBeGreaterThan(1);
    for (const member of plan.oneMore?.members ?? []) expect(left).toContain(member);
    const all = [6.5, 8.2, 9.8].map((thickness) => ({ thickness, width: null }));
    expect(stickPlanOf(presets.map((one) => stickWantsOf(one, all))).oneMore).toBeNull();
  });
});
