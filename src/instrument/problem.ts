import type { Field } from "./field.ts";
import type { Range } from "./instrument.ts";

/** One thing wrong with a file: where, in plain words, and what would do where a range would. */
export interface Problem {
  /** Such as `"body.length"`; empty for the whole. */
  readonly path: string;
  readonly message: string;
  /** Both ends included, in the file's own units. */
  readonly range?: Range;
}

/** "`path` must be `wanted`; it is …": the form all problems but a few take. */
export function problem(path: string, wanted: string, value: unknown, range?: Range): Problem {
  const message = `${brief(path)} must be ${wanted}; it is ${said(value)}.`;
  return range === undefined ? { path, message } : { path, message, range };
}

/** That `value` is not what `field` takes. */
export function fieldProblem(path: string, field: Field, value: unknown): Problem {
  const { quantity, min, max, nullWord } = field;
  const unit = { length: " mm", angle: " degrees", count: "" }[quantity];
  const kind = quantity === "count" ? "a whole number " : "";
  const orNull = nullWord === undefined ? "" : ` (or null: ${nullWord})`;
  return problem(path, `${kind}between ${min} and ${max}${unit}${orNull}`, value, [min, max]);
}

/** A stranger's value in a few words. */
export function said(value: unknown): string {
  if (typeof value === "string")
    return value === "" ? "an empty text" : `the text “${brief(value)}”`;
  if (value === null) return "null";
  if (value === undefined) return "missing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of fields";
  return typeof value === "number" || typeof value === "boolean" ? String(value) : "something else";
}

function brief(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
