import { describe, expect, it } from "vitest";
import { defaultInstrument } from "../../src/instrument/default-instrument.ts";
import {
  frequencyOf,
  newtonsOf,
  newtonsPerPound,
  poundsOf,
  pullOf,
  pullsOf,
  steelWeight,
  usualNotes,
} from "../../src/profile/bench/pull.ts";
import { outlookFrom, recordOf } from "../support/bench-record.ts";

const inch = 25.4;
const scale = 25.5 * inch;

describe("string tension", () => {
  // A December 2000 magazine chart of string tensions, watchalan.com/stringauges.php, 25.5 in scale.
  it.each([
    [0.016, "B3", 23.3],
    [0.014, "D4", 25.2],
  ])("of plain steel %d in at %s is %d lb", (diameter, note, pounds) => {
    const pull = pullOf({ note, unitWeight: null, diameter: diameter * inch }, scale);
    expect((pull ?? 0) / newtonsPerPound).toBeCloseTo(pounds, 1);
  });

  it("is 23.27 lb for .016 in at B3, counting steel at 0.282 lb/in³", () => {
    const pounds = poundsOf(steelWeight(0.016 * inch), scale, frequencyOf("B3") ?? 0);
    expect(pounds).toBeCloseTo(23.27, 2);
  });

  it("is the same in newtons from the mass per metre", () => {
    // T = mu·(2LF)². The pound is 0.45359237 kg exactly; 386.4 in/s² is standard gravity rounded, 9.80665/0.0254 = 386.0886.
    const unitWeight = steelWeight(0.016 * inch);
    const massPerMetre = (unitWeight * 0.45359237) / 0.0254;
    const fromMass = newtonsOf(massPerMetre, scale, 246.94);
    const fromSheet = poundsOf(unitWeight, scale, 246.94) * newtonsPerPound;
    expect(fromMass / fromSheet).toBeCloseTo(386.4 / 386.0886, 6);
  });

  it("takes an entered unit weight before a diameter, and knows nothing without either", () => {
    const known = pullOf({ note: "E2", unitWeight: 0.00059, diameter: 0.3 }, scale);
    expect(known).toBeCloseTo(poundsOf(0.00059, scale, 82.4069) * newtonsPerPound, 2);
    expect(pullOf({ note: "E2", unitWeight: null, diameter: null }, scale)).toBeNull();
    expect(pullOf({ note: "X9", unitWeight: 0.0001, diameter: null }, scale)).toBeNull();
  });
});

describe("notes", () => {
  // A4 = 440 Hz, ISO 16:1975; the others are 2^(n/12) from it.
  it.each([
    ["A4", 440],
    ["a4", 440],
    ["E2", 82.4069],
    ["B3", 246.9417],
    ["D4", 293.6648],
    ["C4", 261.6256],
    ["Bb2", 116.5409],
    ["F#2", 92.4986],
  ])("%s is %d Hz", (note, hertz) => {
    expect(frequencyOf(note)).toBeCloseTo(hertz, 3);
  });

  it("are not guessed at", () => {
    for (const text of ["", "H2", "E", "E22", "82"]) expect(frequencyOf(text)).toBeNull();
    expect(usualNotes(6)).toHaveLength(6);
    expect(usualNotes(8)).toEqual(Array(8).fill(""));
  });
});

describe("what the pull does", () => {
  const { heights, givens } = outlookFrom(defaultInstrument, recordOf({}));
  const strings = [0.016, 0.012].map((d, i) => ({
    note: i === 0 ? "B3" : "E4",
    unitWeight: null,
    diameter: d * inch,
  }));
  const pull = pullsOf(defaultInstrument, heights, givens.middleString, [
    ...strings,
    { note: "E2", unitWeight: null, diameter: null },
  ]);

  it("adds up what is known and says how many are not", () => {
    const [b, e] = strings.map(
      (string) => pullOf(string, 645 + defaultInstrument.bridge.compensation) ?? 0,
    );
    expect(pull.total).toBeCloseTo((b ?? 0) + (e ?? 0), 9);
    expect(pull.unknown).toBe(1);
  });

  it("bears on the saddle as two ropes over an edge do", () => {
    // The resultant of two equal pulls whose directions differ by the break angle is 2T·sin(half of it).
    const resultant = 2 * pull.total * Math.sin((heights.breakAngle * Math.PI) / 360);
    expect(pull.saddleDown).toBeLessThan(resultant);
    expect(pull.saddleDown / resultant).toBeGreaterThan(0.95);
    // Upright parts, by hand: the strings fall toward the nut by what they lose in height over their length, and behind the
    // saddle by the rest of the break angle.
    const { atNut, atSaddle } = givens.middleString;
    const fall = Math.atan((atSaddle - atNut) / (645 + defaultInstrument.bridge.compensation));
    const behind = (heights.breakAngle * Math.PI) / 180 - fall;
    const down = pull.total * Math.sin(behind) + pull.total * Math.sin(fall);
    expect(pull.saddleDown).toBeCloseTo(down, 9);
  });

  it("turns the bridge about the top by the strings' height", () => {
    expect(pull.bridgeMoment).toBeCloseTo((pull.bridgeForward * heights.stringHeight) / 1000, 9);
    expect(pull.neckMoment).toBeGreaterThan(0);
  });
});
