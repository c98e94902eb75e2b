import { type DragEvent, useState } from "react";
import type { Shelf } from "../../store/shelf.ts";
import { type Imported, importFile } from "../../store/shelf-act.ts";
import { fileLimits, shelfFileOf } from "../../store/shelf-file.ts";
import { saveJson } from "../save-file.ts";

interface Props {
  readonly shelf: Shelf;
  readonly onChange: () => Promise<void>;
}

/** The whole shelf out to a file, and files in. */
export function ShelfFiles({ shelf, onChange }: Props) {
  const [done, setDone] = useState<Imported | null>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    if (file.size > fileLimits.bytes) {
      setDone({ ...nothing, refused: "The file is larger than 20 MB." });
      return;
    }
    setDone(await importFile(shelf, await file.text(), Date.now()).catch(() => unwritten));
    await onChange();
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    void take(event.dataTransfer.files[0]);
  };
  return (
    <section
      className="shelf-files"
      aria-label="Files"
      onDragOver={(event) => event.preventDefault()}
      onDrop={drop}
    >
      <h3>Files</h3>
      <button
        type="button"
        onClick={() =>
          void shelf.entries().then((all) => saveJson("rimwright-shelf.json", shelfFileOf(all)))
        }
      >
        Export the whole shelf
      </button>
      <label className="shelf-import">
        Import a file, or drop it here
        <input
          type="file"
          accept=".json,application/json"
          onChange={({ target }) => {
            void take(target.files?.[0]).finally(() => {
              target.value = "";
            });
          }}
        />
      </label>
      <div role="status">{done !== null && <Outcome {...done} />}</div>
    </section>
  );
}

const nothing: Imported = { taken: 0, kept: 0, same: 0, bad: [], refused: null };
const unwritten: Imported = {
  ...nothing,
  refused: "The browser would not take the instruments in.",
};

/** Reasons shown of a file that is wrong all over. */
const mostReasons = 20;

function Outcome({ taken, kept, same, bad, refused }: Imported) {
  if (refused !== null) return <p>{refused}</p>;
  return (
    <>
      <p>
        {taken} taken in
        {kept > 0 ? `, ${kept} of them beside a different one of the same origin` : ""}
        {same > 0 ? `, ${same} on the shelf already` : ""}.
      </p>
      {bad.length > 0 && (
        <ul>
          {bad.slice(0, mostReasons).map(({ path, reason }) => (
            <li key={path + reason}>
              {path === "" ? "" : `${path}: `}
              {reason}
            </li>
          ))}
          {bad.length > mostReasons && <li>and {bad.length - mostReasons} more.</li>}
        </ul>
      )}
    </>
  );
}
