import { bodyFields } from "./body-fields.ts";
import { domeFields, shimFields } from "./dome-fields.ts";
import type { Field } from "./field.ts";
import { neckFields } from "./neck-fields.ts";
import { type TargetKind, targetFields, windowFields } from "./outcome-fields.ts";
import { bridgeFields, stringFields } from "./string-fields.ts";

const stated = {
  ...bodyFields,
  ...domeFields,
  ...shimFields,
  ...neckFields,
  ...bridgeFields,
  ...stringFields,
  ...windowFields,
};

/** Where a number stands in an instrument, such as `"dome.flatLength"`; `.0` and `.1` are a window's ends. */
export type FieldPath = keyof typeof stated | "target.value";

/** Every number of an instrument but the target's own, whose field depends on its kind: see `fieldAt`. */
export const fields: Readonly<Record<Exclude<FieldPath, "target.value">, Field>> = stated;

/** The field at `path` of an instrument whose target is of `kind`. */
export function fieldAt(path: FieldPath, kind: TargetKind): Field {
  return path === "target.value" ? targetFields[kind] : fields[path];
}

export function isFieldPath(text: string): text is FieldPath {
  return text === "target.value" || Object.hasOwn(fields, text);
}

/** Every path, in a builder's order. */
export const fieldPaths: readonly FieldPath[] = [...Object.keys(fields), "target.value"].filter(
  isFieldPath,
);

export type FieldGroup =
  | "body"
  | "dome"
  | "shim"
  | "neck"
  | "bridge"
  | "strings"
  | "target"
  | "windows"
  | "tolerances";

/** The groups in a builder's order, with their headings. */
export const fieldGroups: readonly (readonly [FieldGroup, string])[] = [
  ["body", "Body"],
  ["dome", "Dome and break"],
  ["shim", "Shim"],
  ["neck", "Neck"],
  ["bridge", "Bridge and saddle"],
  ["strings", "Strings"],
  ["target", "Target"],
  ["windows", "Windows"],
  ["tolerances", "Tolerances"],
];

export function pathsIn(group: FieldGroup): readonly FieldPath[] {
  return fieldPaths.filter((path) => path.startsWith(`${group}.`));
}

/** How closely each can be held at the bench, plus or minus. Defaults from practice, no source. */
export const defaultTolerances = {
  "dome.dishRadius": 100,
  "dome.flatLength": 1,
  "dome.tailExtra": 0.1,
  "shim.contact": 1,
  "neck.fingerboardThickness": 0.1,
  "neck.fretHeight": 0.05,
  "neck.neckTilt": 0.05,
  "neck.relief": 0.05,
  "bridge.thickness": 0.1,
  "bridge.compensation": 0.5,
  "strings.nutClearance": 0.05,
  "strings.actionBass": 0.1,
  "strings.actionTreble": 0.1,
} satisfies Partial<Record<FieldPath, number>>;
