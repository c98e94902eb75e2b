import { useEffect, useState } from "react";
import type { Shelf } from "../../store/shelf.ts";
import type { SetAside } from "../../store/shelf-database.ts";
import { fileName, saveJson } from "../save-file.ts";

/** Records that could not be read: kept as they are, to be saved to a file. */
export function SetAsideList({ shelf }: { readonly shelf: Shelf }) {
  const [aside, setAside] = useState<readonly SetAside[]>([]);
  useEffect(() => void shelf.aside().then(setAside), [shelf]);
  if (aside.length === 0) return null;
  return (
    <section aria-label="Set aside">
      <h3>Set aside</h3>
      <p>These could not be read, and are kept as they were. The rest of the shelf is whole.</p>
      <ul>
        {aside.map(({ id, json }) => (
          <li key={id}>
            <code>{id}</code>{" "}
            <button type="button" onClick={() => saveJson(fileName(id, "set-aside", "json"), json)}>
              Save to a file
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
