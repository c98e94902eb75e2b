import { compareLine } from "../../drawing/compare-line.ts";

/** The line type a column is drawn in. */
export function LineSample({ index }: { readonly index: number }) {
  return (
    <svg className="line-sample" viewBox="0 0 64 6" aria-hidden="true">
      <path className={`line-${compareLine(index)}`} d="M0,3L64,3" />
    </svg>
  );
}
