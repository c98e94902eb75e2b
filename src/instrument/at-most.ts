import * as z from "zod/mini";

/**
 * A text or list no longer than `most`. zod's own check looks at `length` before it is known that there is
 * a text or a list, and throws on a `length` that is no number and cannot be made one.
 */
export const atMost = (most: number) =>
  new z.core.$ZodCheckMaxLength({
    check: "max_length",
    maximum: most,
    when: ({ value }) => typeof value === "string" || Array.isArray(value),
  });
