import type * as z from "zod/mini";
import { domeMethods } from "./dome-fields.ts";
import { toleranceBounds } from "./field.ts";
import { fieldAt, fields, isFieldPath } from "./fields.ts";
import { newestVersion, withVersion } from "./file-version.ts";
import type { Instrument } from "./instrument.ts";
import { targetKinds } from "./outcome-fields.ts";
import { fieldProblem, type Problem, problem, said } from "./problem.ts";
import { relationProblems } from "./relations.ts";
import { instrumentSchema } from "./schema.ts";
import { textLimits } from "./text-limits.ts";
import { tracingFlaw } from "./tracing.ts";
import { statesSomethingKnown, unknownKeys } from "./unknown-keys.ts";

export type ReadInstrumentResult =
  | { readonly ok: true; readonly instrument: Instrument }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The one door for files, fragments and pastes. Takes any JSON value and never throws. */
export function readInstrument(json: unknown): ReadInstrumentResult {
  const stranger = notOurs(json);
  if (stranger !== null) return { ok: false, problems: [stranger] };
  const parsed = instrumentSchema.safeParse(json);
  if (!parsed.success) {
    const problems = parsed.error.issues.flatMap((issue) => problemsOf(issue, json));
    return { ok: false, problems: firstAtEachPath(problems) };
  }
  const problems = relationProblems(parsed.data);
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, instrument: withVersion(parsed.data) };
}

function notOurs(json: unknown): Problem | null {
  if (typeof json !== "object" || json === null || Array.isArray(json))
    return { path: "", message: `An instrument is a JSON object; this is ${said(json)}.` };
  const { format = "rimwright-instrument", version = 1 } = json as Record<string, unknown>;
  if (format !== "rimwright-instrument")
    return {
      path: "format",
      message: `This is not a Rimwright instrument: its format is ${said(format)}.`,
    };
  if (typeof version === "number" && version > newestVersion)
    return {
      path: "version",
      message: `This file is of version ${version}; this Rimwright reads versions 1 to ${newestVersion}. A newer Rimwright is needed.`,
    };
  if (version !== 1 && version !== 2) return problem("version", "1 or 2", version);
  return statesSomethingKnown(json) ? null : nothingKnown(json);
}

/** A file of some other kind, or one whose every name is misspelt. */
function nothingKnown(json: object): Problem {
  const [first] = unknownKeys(json).filter(({ nearest }) => nearest !== null);
  const hint = first === undefined ? "" : ` For ${said(first.path)} write ${first.nearest}.`;
  return { path: "", message: `This states nothing an instrument has.${hint}` };
}

function problemsOf(issue: z.core.$ZodIssue, json: unknown): readonly Problem[] {
  return issue.code === "unrecognized_keys"
    ? issue.keys.map((key) => strangerProblem([...issue.path.map(String), key].join("."), key))
    : [problemOf(issue, json)];
}

const strangerProblem = (path: string, name: string): Problem => ({
  path,
  message: `tolerances holds ${said(name)}, which names no number of an instrument.`,
});

function toleranceProblem(name: string, value: unknown): Problem {
  const path = `tolerances.${name}`;
  if (!isFieldPath(name)) return strangerProblem(path, name);
  const { min, max } = toleranceBounds(fieldAt(name, "shim"));
  return problem(path, `between ${min} and ${max}`, value, [min, max]);
}

function problemOf(issue: z.core.$ZodIssue, json: unknown): Problem {
  const path = issue.path.map(String).join(".");
  const value = valueAt(json, issue.path);
  if (issue.path[0] === "tolerances" && issue.path.length > 1)
    return toleranceProblem(String(issue.path[1]), value);
  if (
    issue.path[0] === "body" &&
    (issue.path[1] === "tracing" || issue.path[1] === "tracingTreble")
  )
    return tracingProblem(json, issue.path[1]);
  if (isFieldPath(path) && path !== "target.value") return fieldProblem(path, fields[path], value);
  if (isText(path) && typeof value === "string")
    return {
      path,
      message: `${path} must be ${textLimits[path]} characters at most; it is ${value.length} long.`,
    };
  return problem(path, wantedAt(path), value);
}

function tracingProblem(json: unknown, name: "tracing" | "tracingTreble"): Problem {
  const value = valueAt(json, ["body", name]);
  const places = Array.isArray(value) && value.every(isPlace) ? value : null;
  const wanted = places === null ? null : tracingFlaw(places);
  return {
    path: `body.${name}`,
    message: `body.${name} must be ${wanted ?? "a list of places, each [distance from the tail, half width] in mm"}.`,
  };
}

const isPlace = (value: unknown): value is [number, number] =>
  Array.isArray(value) && value.length === 2 && value.every(Number.isFinite);

function isText(path: string): path is keyof typeof textLimits {
  return Object.hasOwn(textLimits, path);
}

function wantedAt(path: string): string {
  if (isText(path)) return "a text";
  if (path === "target.value") return "a number";
  if (path === "body.leftHanded") return "true, or left out";
  if (path === "dome.method") return `one of ${domeMethods.join(", ")}`;
  if (path === "target.kind") return `one of ${targetKinds.join(", ")}`;
  return path.startsWith("windows.")
    ? "two numbers, the low end and the high end"
    : "a group of fields";
}

function valueAt(json: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    json,
  );
}

function firstAtEachPath(problems: readonly Problem[]): readonly Problem[] {
  const seen = new Set<string>();
  return problems.filter(({ path }) => !seen.has(path) && seen.add(path));
}
