import { lazy, Suspense, useState } from "react";

const Numbers = lazy(() =>
  import("./numbers.tsx").then(({ Numbers: Body }) => ({ default: Body })),
);

/** What else follows from the plan, for whoever wants it. */
export function AllNumbers() {
  const [open, setOpen] = useState(false);
  return (
    <details className="all-numbers" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>All the numbers</summary>
      {open && (
        <Suspense>
          <Numbers />
        </Suspense>
      )}
    </details>
  );
}
