import { describe, expect, test } from "vitest";
import type { Instrument } from "../../../src/instrument/instrument.ts";
import { presets } from "../../../src/instrument/presets.ts";
import { topZ } from "../../../src/profile/top.ts";
import { aimedAt } from "../../support/random-instrument.ts";
import { pathsOf, pointsOf, readPoints, textOf, textsOf } from "../../support/read-scene.ts";
import { planned } from "../../support/solved.ts";
import { drawn, preset } from "./sections.ts";

const everyView = presets.flatMap((instrument) =>
  ([1, 5, 10] as const).flatMap((stretch) =>
    [false, true].map((turned) => [instrument.id, stretch, turned, instrument] as const),
  ),
);

const orchestra = preset("orchestra-size");

describe.each(everyView)("%s, heights ×%i, turned over: %s", (_, stretch, turned, instrument) => {
  const section = drawn(instrument, { stretch, turned });
  const { scene, toX, toZ, handles } = section;
  const { givens, profile } = planned(instrument);
  /** Two px rounded to a hundredth, in mm. */
  const fine = 0.02 / section.frame.along;

  test("the shim is as thick as it is, from the tail to its contact", () => {
    const points = pointsOf(scene, "shim");
    const zs = points.map(([, y]) => toZ(y));
    expect(Math.max(...zs)).toBeCloseTo(0, 1);
    expect(Math.max(...zs) - Math.min(...zs)).toBeCloseTo(profile.shim, 1);
    const right = Math.max(...points.map(([x]) => toX(x)));
    expect(Math.abs(right - instrument.shim.contact)).toBeLessThan(fine);
  });

  test("the datum leaves the flat at the break by the pitch", () => {
    const [tail, neck] = pointsOf(scene, "datum").map(([x, y]) => [toX(x), toZ(y)] as const);
    if (tail === undefined || neck === undefined) throw new Error("no datum");
    const slope = (neck[1] - tail[1]) / (neck[0] - tail[0]);
    expect((Math.atan(slope) * 180) / Math.PI).toBeCloseTo(profile.pitch, 2);
    expect(tail[0] - tail[1] / slope).toBeCloseTo(profile.breakX, 0);
  });

  test("handles offset on the break, on the shim's contact and on the saddle", () => {
    expect(toX(handles.break?.[0] ?? Number.NaN)).toBeCloseTo(profile.breakX, 6);
    expect(toZ(handles.break?.[1] ?? Number.NaN)).toBeCloseTo(0, 6);
    expect(toX(handles.part?.[0] ?? Number.NaN)).toBeCloseTo(instrument.shim.contact, 6);
    expect(toZ(handles.part?.[1] ?? Number.NaN)).toBeCloseTo(-profile.shim, 6);
    if (turned) return expect(handles.saddle).toBeNull();
    expect(toX(handles.saddle?.[0] ?? 0)).toBeCloseTo(profile.saddleX, 6);
    const overTop = toZ(handles.saddle?.[1] ?? 0) - topZ(givens, profile.dome, profile.saddleX);
    expect(overTop).toBeCloseTo(profile.stringHeight, 6);
  });

  test("says its stretch and carries a true bar each way", () => {
    textOf(scene, stretch === 1 ? "True scale" : `Heights ×${stretch}`);
    const bars = pathsOf(scene, "scale bar").map(({ d }) => readPoints(d));
    const length = (i: number, axis: 0 | 1): number =>
      Math.abs((bars[i]?.[0]?.[axis] ?? 0) - (bars[i]?.[1]?.[axis] ?? 0));
    const along = Number.parseFloat(
      textOf(scene, `${Math.round(length(0, 0) / section.frame.along)} mm`).text,
    );
    expect(length(0, 0)).toBeCloseTo(along * section.frame.along, 1);
    const up = textsOf(scene).find(({ text }) => text.endsWith(" up"));
    expect(length(3, 1)).toBeCloseTo(Number.parseFloat(up?.text ?? "") * section.frame.up, 1);
    expect(section.frame.up / section.frame.along).toBeCloseTo(stretch, 9);
  });

  test("cuts the sides only when heights are stretched", () => {
    expect(pathsOf(scene, "cut of the sides")).toHaveLength(stretch === 1 ? 0 : 1);
    expect(pathsOf(scene, "back")).toHaveLength(stretch === 1 ? 1 : 0);
  });
});

describe("the top", () => {
  const { scene, toX, toZ } = drawn(orchestra);
  const { givens, profile } = planned(orchestra);

  test("runs on the dome from the tail and on the flat to the neck end, open over the soundhole", () => {
    const runs = pathsOf(scene, "top").map(({ d }) =>
      readPoints(d).map(([x, y]) => [toX(x), toZ(y)]),
    );
    const [tail] = runs[0] ?? [];
    expect(tail?.[0]).toBeCloseTo(0, 1);
    expect(tail?.[1]).toBeCloseTo(-profile.tailDrop, 1);
    for (const [x = 0, z = 0] of runs[0] ?? [])
      expect(Math.abs(z - topZ(givens, profile.dome, x))).toBeLessThan(0.01);
    const flat = runs.at(-1) ?? [];
    expect(flat.every(([x = 0]) => x > profile.breakX - 0.01)).toBe(true);
    expect(flat.every(([, z = 1]) => Math.abs(z) < 0.01)).toBe(true);
    const { soundholeAt, soundholeDiameter } = orchestra.body;
    const hole = soundholeAt - soundholeDiameter / 2;
    expect(runs[0]?.at(-1)?.[0]).toBeCloseTo(hole, 1);
  });

  test("is warm along the dome and cool along the flat", () => {
    expect(pathsOf(scene, "dome colour").every(({ fill }) => fill === "dome")).toBe(true);
    expect(pathsOf(scene, "flat colour").map(({ fill }) => fill)).toEqual(["flat"]);
  });
});

describe("values", () => {
  const fine = (value: number): string => value.toFixed(4);

  test("are the profile's, in the words given, and the stretch leaves them alone", () => {
    const { profile } = planned(orchestra);
    const texts: readonly string[] = [1, 5, 10].flatMap((stretch) => {
      const { scene } = drawn(orchestra, {
        stretch: stretch === 1 ? 1 : stretch === 5 ? 5 : 10,
        words: { length: fine, shim: fine, height: fine, angle: fine, unit: "mm" },
        width: 2400,
        height: 900,
      });
      return textsOf(scene).map(({ text }) => text);
    });
    for (const [name, value] of [
      ["shim", profile.shim],
      ["saddle", profile.saddleExposure],
      ["strings", profile.stringHeight],
      ["gap", profile.flatGap],
      ["fret plane", profile.bridgeClearance],
      ["pitch", profile.pitch],
      ["break to tail", profile.breakX],
      ["flat", orchestra.dome.flatLength],
      ["stick", orchestra.shim.contact],
    ] as const) {
      const said = texts.filter(
        (text) => text.startsWith(name) && text.endsWith(` ${fine(value)}`),
      );
      expect(said, name).toHaveLength(3);
    }
  });
});

describe("windows at the saddle", () => {
  const missed = (instrument: Instrument): readonly string[] =>
    pathsOf(drawn(instrument).scene)
      .filter(({ role }) => role.startsWith("miss"))
      .map(({ role }) => role);

  test("an instrument within its windows shows no miss", () => {
    expect(missed(orchestra)).toEqual([]);
  });

  test("strings too low show by a bar from the saddle up to both bands", () => {
    const low = aimedAt(orchestra, "stringHeight", 9);
    expect(missed(low)).toEqual([
      "miss saddle exposed",
      "miss string height",
      "miss fret plane over the bridge",
    ]);
    const { scene, toZ } = drawn(low);
    const { profile } = planned(low);
    const zs = pointsOf(scene, "miss string height").map(([, y]) => toZ(y) + profile.flatGap);
    expect(Math.min(...zs)).toBeCloseTo(9, 1);
    expect(Math.max(...zs)).toBeCloseTo(low.windows.stringHeight[0], 1);
  });
});

describe("odd instruments", () => {
  const overrun = aimedAt(orchestra, "shim", 3);

  test("an overrun is dimensioned with its depth, and the board's flat is drawn along it", () => {
    const { profile } = planned(overrun);
    expect(profile.overrunLength).toBeGreaterThan(100);
    expect(textOf(drawn(overrun, { width: 1100 }).scene, "overrun").text).toContain("deep");
    const { scene, toX } = drawn(overrun, { turned: true });
    const flat = pointsOf(scene, "flat colour").map(([x]) => toX(x));
    expect(Math.min(...flat)).toBeCloseTo(profile.breakX - profile.overrunLength, 0);
  });

  test("a negative gap is drawn and said as one", () => {
    expect(planned(overrun).profile.flatGap).toBeLessThan(0);
    expect(textOf(drawn(overrun).scene, "gap").text).toMatch(/ −1\.\d+ mm$/);
  });

  test("no dome is drawn straight from tail to break", () => {
    const none = { ...orchestra, dome: { ...orchestra.dome, dishRadius: null, braceRadius: null } };
    const { scene, toX, toZ } = drawn(none);
    const { profile } = planned(none);
    const slope = profile.tailDrop / profile.breakX;
    const points = readPoints(pathsOf(scene, "top")[0]?.d ?? "");
    expect(points.length).toBeGreaterThanOrEqual(2);
    for (const [x, y] of points) expect(toZ(y)).toBeCloseTo((toX(x) - profile.breakX) * slope, 1);
  });
});

test("a held frame stays while the drawing changes", () => {
  const { frame } = drawn(orchestra);
  const thicker = drawn(aimedAt(orchestra, "shim", 14), { hold: frame });
  expect(thicker.frame).toBe(frame);
  expect(drawn(aimedAt(orchestra, "shim", 14), { stretch: 10 }).frame).not.toEqual(frame);
});
