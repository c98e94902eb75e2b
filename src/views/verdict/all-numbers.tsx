import { useState } from "react";
import { latePart } from "../late-part.tsx";

const Numbers = latePart({
  what: "The list of all numbers",
  load: () => import("./numbers.tsx").then(({ Numbers }) => Numbers),
});

/** What else follows from the plan, for whoever wants it. */
export function AllNumbers() {
  const [open, setOpen] = useState(false);
  return (
    <details className="all-numbers" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>All the numbers</summary>
      {open && <Numbers />}
    </details>
  );
}
