import { fieldAt } from "../../instrument/fields.ts";
import type { Units } from "../../instrument/length.ts";
import { stickBounds } from "../../store/files/sticks-form.ts";
import { fieldFormat, type NumberFormat, optional } from "../fields/value-entry.tsx";

/** How a stick's thickness is written and stepped: as a shim's, and never below nothing. */
export const thicknessFormat = (units: Units): NumberFormat =>
  fieldFormat({ ...fieldAt("target.value", "shim"), ...stickBounds.thickness }, units);

/** The same of its width, which need not be stated. */
export const widthFormat = (units: Units): NumberFormat =>
  optional(fieldFormat(fieldAt("shim.contact", "shim"), units));
