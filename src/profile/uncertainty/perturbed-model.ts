import { readField } from "../../instrument/field-value.ts";
import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Instrument, Range } from "../../instrument/instrument.ts";
import { windowKinds } from "../../instrument/outcome-fields.ts";
import { type Givens, givensOf } from "../givens.ts";
import { domeFits, domeOnPart } from "../reach.ts";
import { chainOf } from "../saddle-chain.ts";
import { cutOf } from "../seat.ts";
import { cleanShimOf, cleanShimTable } from "./clean-shim.ts";
import type { Input, Model, Shape } from "./monte-carlo.ts";
import { tolerancesOf } from "./tolerances.ts";

/**
 * What is drawn of an instrument: an outcome for each window, and what else must not fall below 0: how much
 * thicker the shim is than the thinnest clean one, or with a seat what is left of the plate.
 */
export const perturbedOutcomesOf = ({ dome }: Instrument) =>
  [...windowKinds, dome.method === "break" ? "cleanShimMargin" : "thicknessLeft"] as const;

export type PerturbedOutcome = ReturnType<typeof perturbedOutcomesOf>[number];

/** A measure with its plus-or-minus, and how it is taken to be spread. */
export interface PerturbedInput extends Input {
  readonly path: FieldPath;
  readonly plusMinus: number;
}

/**
 * The measures of a built instrument that have a tolerance. A rectangular one lies anywhere within its
 * plus-or-minus alike: u = a/√3 (JCGM 100:2008, 4.3.7). A normal one is taken to lie within it 95 times
 * in 100: u = a/1.96 (the same, 4.3.4).
 */
export function inputsOf(built: Instrument, shape: Shape): readonly PerturbedInput[] {
  const share = shape === "normal" ? normal95 : Math.sqrt(3);
  return tolerancesOf(built).map(([path, plusMinus]) => ({
    path,
    plusMinus,
    value: readField(built, path) ?? 0,
    u: plusMinus / share,
    shape,
  }));
}

/** 95 % of a normal distribution lie within so many deviations. */
export const normal95 = 1.959963984540054;

/** The range each drawn outcome must keep to: the builder's windows, and no overrun, or some plate left. */
export const windowsOf = ({ windows }: Instrument): readonly Range[] => [
  ...windowKinds.map((kind) => windows[kind]),
  [0, Number.POSITIVE_INFINITY],
];

/** A step small against the measure and large against rounding, for its slope. */
export function stepOf(path: FieldPath, value: number): number {
  return Math.max(fieldAt(path, "shim").step / 10, 1e-3 * Math.abs(value));
}

/** Body measures the outline is drawn through; where one of them varies it is drawn anew each time. */
const outlinePath = /^body\.(length|.*Width|.*At)$/;

/**
 * An instrument as a function of some of its measures. Works on a copy of its own, so that a draw
 * costs no new instrument. `many`: look the clean shim up in a table where the outline stays as it is.
 */
export function modelOf(built: Instrument, paths: readonly FieldPath[], many: boolean): Model {
  const { draft, write } = draftOf(built, paths);
  const base = givensOf(built);
  const still = !paths.some((path) => outlinePath.test(path));
  const cleanShim =
    base.ok && base.givens.seat === null && many && still
      ? cleanShimTable(base.givens, tableSpread(built))
      : cleanShimOf;
  return (inputs, outcomes) => {
    write(inputs);
    const set = givensOf(draft, base.ok && still ? base.givens.halves : undefined);
    return set.ok && fill(set.givens, draft.target.value, cleanShim, outcomes);
  };
}

/** Wide enough for any draw of the break but one in many millions; a draw beyond it is worked out in full. */
const tableSpread = (built: Instrument): number =>
  Math.max(1, 5 * (built.tolerances["dome.flatLength"] ?? 0));

function fill(
  givens: Givens,
  part: number,
  cleanShim: (givens: Givens) => number,
  outcomes: Float64Array,
): boolean {
  const dome = domeOnPart(givens, part);
  if (dome === null || !domeFits(givens, dome)) return false;
  const chain = chainOf(givens, dome, part);
  outcomes[0] = chain.bridgeClearance;
  outcomes[1] = chain.saddleExposure;
  outcomes[2] = chain.stringHeight;
  outcomes[3] = chain.breakAngle;
  outcomes[4] = chain.pitch;
  const { seat, instrument } = givens;
  outcomes[5] =
    seat === null
      ? part - cleanShim(givens)
      : instrument.seat.topThickness - cutOf(givens, seat, dome).mostCut;
  return !Number.isNaN(outcomes[5]);
}

type Group = Record<string, number>;

function draftOf(built: Instrument, paths: readonly FieldPath[]) {
  const draft: Instrument = {
    ...built,
    body: { ...built.body },
    dome: { ...built.dome },
    shim: { ...built.shim },
    seat: { ...built.seat },
    neck: { ...built.neck },
    bridge: { ...built.bridge },
    strings: { ...built.strings },
    target: { ...built.target },
  };
  const places = paths.map((path) => {
    const [group = "", key = ""] = path.split(".");
    return { group: draft[group as keyof Instrument] as unknown as Group, key };
  });
  const write = (inputs: Float64Array): void => {
    for (let i = 0; i < places.length; i++) {
      const place = places[i];
      const value = inputs[i];
      if (place !== undefined && value !== undefined) place.group[place.key] = value;
    }
  };
  return { draft, write };
}

/**
 * The slope of a smooth `f` at x from four places `step` and 2·`step` to either side: central
 * differences with Richardson's extrapolation. The error left is step⁴ times a thirtieth of the fifth
 * derivative, and rounding over step: for heights of some 10 mm that change over 100 mm or more, a
 * step near a tenth of a millimetre, or a thousandth of the value, leaves about 1e-12 of either.
 */
export function slopeAt(f: (x: number) => number, x: number, step: number): number {
  const near = f(x + step) - f(x - step);
  const far = f(x + 2 * step) - f(x - 2 * step);
  return (8 * near - far) / (12 * step);
}
