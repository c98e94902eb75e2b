import { fields } from "./fields.ts";
import type { Body, Instrument } from "./instrument.ts";
import { targetFields, targetKindsOf, windowKinds } from "./outcome-fields.ts";
import { fieldProblem, type Problem, problem } from "./problem.ts";

/** The least distance along the body between one bout, the waist and the next, mm. */
const leastSpacing = 1;

const outlinePlaces = ["lowerBoutAt", "waistAt", "upperBoutAt"] as const;

/** What is wrong between numbers that are each right alone. */
export function relationProblems(instrument: Instrument): readonly Problem[] {
  return [
    ...outlineProblems(instrument.body),
    ...targetProblems(instrument),
    ...windowProblems(instrument),
  ];
}

/** Tail, lower bout, waist, upper bout and neck end follow one another, so that half width is a function of x. */
function outlineProblems(body: Body): readonly Problem[] {
  const { length, tracing, tracingTreble: treble } = body;
  const ends = [tracing, treble].flatMap((half) => half?.at(-1)?.[0] ?? []);
  const [traced, other = traced] = ends;
  if (traced !== undefined && other !== traced)
    return [problem("body.tracingTreble", `as long as the bass half, ${traced} mm`, other)];
  const lengthProblems =
    traced === undefined || traced === length ? [] : [lengthProblem(length, traced)];
  return tracing === undefined ? [...lengthProblems, ...boutProblems(body)] : lengthProblems;
}

function boutProblems(body: Body): readonly Problem[] {
  return outlinePlaces.flatMap((name, i) => {
    const before = outlinePlaces[i - 1];
    const after = outlinePlaces[i + 1];
    const low = (before === undefined ? 0 : body[before]) + leastSpacing;
    const high = (after === undefined ? body.length : body[after]) - leastSpacing;
    if (low <= body[name] && body[name] <= high) return [];
    const path = `body.${name}`;
    const between = `between ${before ?? "the tail"} and ${after ?? "the neck end"}`;
    return [
      low <= high
        ? problem(path, `${between}: ${low} to ${high} mm`, body[name], [low, high])
        : problem(path, `${between}, and these leave no room`, body[name]),
    ];
  });
}

/** A traced outline is as long as it was traced. */
const lengthProblem = (length: number, traced: number): Problem =>
  problem("body.length", `the traced outline's, ${traced} mm`, length, [traced, traced]);

function targetProblems({ target, dome }: Instrument): readonly Problem[] {
  const kinds = targetKindsOf(dome.method);
  if (!kinds.includes(target.kind)) {
    const wanted = `one of ${kinds.join(", ")}, with dome.method ${dome.method}`;
    return [problem("target.kind", wanted, target.kind)];
  }
  const field = targetFields[target.kind];
  return field.min <= target.value && target.value <= field.max
    ? []
    : [fieldProblem("target.value", field, target.value)];
}

function windowProblems({ windows }: Instrument): readonly Problem[] {
  return windowKinds.flatMap((kind) => {
    const [low, high] = windows[kind];
    if (low <= high) return [];
    const { max } = fields[`windows.${kind}.1`];
    return [problem(`windows.${kind}.1`, `no less than the low end, ${low}`, high, [low, max])];
  });
}
