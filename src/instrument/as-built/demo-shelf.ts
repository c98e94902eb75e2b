import { presets } from "../presets.ts";
import { emptyAsBuilt, type FinishedInstrument, type Measurements } from "./as-built.ts";
import { isMeasurementKey, type MeasurementKey, measurementField } from "./measurement-fields.ts";
import { type StepId, stepsOf } from "./steps.ts";

/** The day each step was done, for an instrument begun in a month. */
const days: Readonly<Partial<Record<StepId, string>>> = {
  level: "-02",
  mark: "-02",
  dish: "-03",
  check: "-03",
  shim: "-04",
  flat: "-04",
  overrun: "-05",
  offer: "-06",
  gap: "-08",
  fingerboard: "-15",
  bridge: "-19",
  saddle: "-21",
  strings: "-22",
  week: "-29",
  year: "",
};

function invented(
  preset: string,
  name: string,
  month: string,
  values: Readonly<Partial<Record<MeasurementKey, number>>>,
): readonly FinishedInstrument[] {
  const base = presets.find(({ id }) => id === preset);
  if (base === undefined) return [];
  const dayOf = (step: StepId): string =>
    step === "year" ? `${Number(month.slice(0, 4)) + 1}${month.slice(4)}-22` : month + days[step];
  const readings: Measurements = Object.fromEntries(
    Object.entries(values).flatMap(([key, value]) =>
      isMeasurementKey(key)
        ? [[key, { value, date: dayOf(measurementField(key).at), note: "" }] as const]
        : [],
    ),
  );
  const last = values.yearClearance === undefined ? "week" : "year";
  const steps = stepsOf("break");
  const done = steps.slice(0, steps.indexOf(last) + 1);
  return [
    {
      instrument: { ...base, id: `invented-${preset}`, name },
      asBuilt: {
        ...emptyAsBuilt,
        readings,
        done: Object.fromEntries(done.map((step) => [step, dayOf(step)])),
        finished: dayOf("strings"),
      },
      invented: true,
    },
  ];
}

const setUp = { actionBass: 2.3, actionTreble: 1.85, relief: 0.15 };

/**
 * Finished instruments that nobody built, to show what learning looks like. One of them was glued in damp
 * air, and is an outlier.
 */
export const demoShelf: readonly FinishedInstrument[] = [
  ...invented("orchestra-size", "Invented: orchestra size, spruce", "2024-03", {
    shim: 8.55,
    contact: 20,
    flatLength: 100,
    gapAfter: 1.63,
    fingerboardThickness: 6.37,
    bridgeThickness: 8.5,
    bridgeClearance: 0.65,
    ...setUp,
    stringHeight: 12.16,
    saddleExposure: 3.66,
    weekRelief: setUp.relief,
    weekClearance: 0.03,
    yearRelief: setUp.relief,
    yearClearance: -0.18,
  }),
  ...invented("dreadnought-size", "Invented: dreadnought size, spruce", "2024-06", {
    shim: 9.05,
    contact: 20,
    flatLength: 100,
    gapAfter: 1.39,
    fingerboardThickness: 6.41,
    bridgeThickness: 8.5,
    bridgeClearance: 0.45,
    ...setUp,
    stringHeight: 11.82,
    saddleExposure: 3.32,
    weekRelief: setUp.relief,
    weekClearance: -0.28,
    yearRelief: setUp.relief,
    yearClearance: -0.57,
  }),
  ...invented("parlour", "Invented: parlour size, cedar", "2024-09", {
    shim: 7.15,
    contact: 20,
    flatLength: 103,
    gapAfter: 2.08,
    fingerboardThickness: 6.35,
    bridgeThickness: 8.9,
    bridgeClearance: 0.68,
    ...setUp,
    stringHeight: 12.59,
    saddleExposure: 3.69,
    weekRelief: setUp.relief,
    weekClearance: 0.08,
    yearRelief: setUp.relief,
    yearClearance: -0.13,
  }),
  ...invented("three-quarter", "Invented: three-quarter size, spruce", "2025-03", {
    shim: 6.95,
    contact: 20,
    flatLength: 90,
    gapAfter: 1.63,
    fingerboardThickness: 6.39,
    bridgeThickness: 8.5,
    bridgeClearance: 0.67,
    ...setUp,
    stringHeight: 12.13,
    saddleExposure: 3.63,
    weekRelief: setUp.relief,
    weekClearance: 0.07,
  }),
  ...invented("jumbo", "Invented: jumbo size, glued in damp air", "2025-08", {
    shim: 9.75,
    contact: 20,
    flatLength: 105,
    gapAfter: 0.62,
    fingerboardThickness: 6.62,
    bridgeThickness: 8.1,
    bridgeClearance: 0.29,
    ...setUp,
    stringHeight: 11.37,
    saddleExposure: 3.27,
    weekRelief: setUp.relief,
    weekClearance: -0.48,
  }),
];
