import type { Grade } from "../../profile/outcome.ts";
import type { Standing } from "../../profile/standing.ts";

/** A shape for each, so that none is told by colour alone. */
const shapes: Readonly<Record<Standing | Grade, string>> = {
  within: "M8 2.5 A5.5 5.5 0 1 1 7.99 2.5 Z",
  close: "M8 1.5 L15 14 H1 Z",
  outside: "M2 5 L5 2 L8 5 L11 2 L14 5 L11 8 L14 11 L11 14 L8 11 L5 14 L2 11 L5 8 Z",
  stop: "M5 1 H11 L15 5 V11 L11 15 H5 L1 11 V5 Z",
  warn: "M8 1.5 L15 14 H1 Z",
  note: "M2 2 H14 V14 H2 Z",
};

export function Mark({ of }: { readonly of: Standing | Grade }) {
  return (
    <svg className={`mark-shape mark-${of}`} viewBox="0 0 16 16" aria-hidden="true">
      <path d={shapes[of]} />
    </svg>
  );
}
