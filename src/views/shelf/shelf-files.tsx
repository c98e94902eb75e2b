import { useState } from "react";
import { useStore } from "zustand";
import { shelfFiles } from "../../store/shelf/export.ts";
import { type ImportPlan, type ImportResult, runImport } from "../../store/shelf/import.ts";
import type { Session } from "../../store/shelf/session.ts";
import { saveJson } from "../save-file.ts";
import { ImportQuestion } from "./import-question.tsx";

/** Reasons shown of a file that is wrong all over. */
const mostReasons = 20;

/** What a file brought, and what of it could not be read and why. */
function ImportReport({ added, replaced, skipped, same, sticks, bad }: ImportResult) {
  const told = [
    `${added} imported`,
    ...(replaced > 0 ? [`${replaced} replaced, the former one undo away`] : []),
    ...(same > 0 ? [`${same} on the shelf already`] : []),
    ...(skipped > 0 ? [`${skipped} left out`] : []),
    ...(sticks > 0 ? [sticks === 1 ? "1 stick" : `${sticks} sticks`] : []),
  ];
  return (
    <>
      <p>{told.join("; ")}.</p>
      {bad.length > 0 && (
        <>
          <p>These could not be read, and were left out:</p>
          <ul className="shelf-bad">
            {bad.slice(0, mostReasons).map(({ path, reason }) => (
              <li key={path + reason}>
                {path !== "" && <code>{path}</code>} {reason}
              </li>
            ))}
            {bad.length > mostReasons && <li>and {bad.length - mostReasons} more.</li>}
          </ul>
        </>
      )}
    </>
  );
}

/** How far a file has come. */
export type ImportState =
  | { readonly is: "none" }
  | { readonly is: "reading"; readonly name: string }
  | { readonly is: "asking"; readonly plan: ImportPlan }
  | { readonly is: "done"; readonly done: ImportResult }
  | { readonly is: "refused"; readonly reason: string };

interface Props {
  readonly session: Session;
  /** Whether there are no instruments to put in a file. */
  readonly isEmpty: boolean;
  readonly importState: ImportState;
  readonly onImportState: (importState: ImportState) => void;
  readonly onFile: (file: File) => void;
  readonly onChange: () => Promise<void>;
}

/** The whole shelf out to a file, and files in. */
export function ShelfFiles(props: Props) {
  const { session, isEmpty, importState, onImportState, onFile, onChange } = props;
  const [saved, setSaved] = useState("");
  const sticks = useStore(session.parts.shop, (shop) => shop?.sticks.owned.length ?? 0);
  const save = async (): Promise<void> => {
    setSaved(await saveWhole(session));
    await onChange();
  };
  return (
    <section className="shelf-files" aria-label="Files">
      <div className="shelf-line">
        <button type="button" disabled={isEmpty && sticks === 0} onClick={() => void save()}>
          Export the whole shelf
        </button>
        <label className="button shelf-import">
          Import a file
          <input
            type="file"
            className="unseen"
            accept=".json,application/json"
            onChange={({ target }) => {
              const file = target.files?.[0];
              if (file !== undefined) onFile(file);
              target.value = "";
            }}
          />
        </label>
        <span className="shelf-hint">or drop it anywhere here</span>
      </div>
      <div role="status">
        {saved !== "" && <p>{saved}</p>}
        {importState.is === "reading" && <p>Reading {importState.name}…</p>}
        {importState.is === "refused" && <p className="shelf-refused">{importState.reason}</p>}
        {importState.is === "done" && <ImportReport {...importState.done} />}
      </div>
      {importState.is === "asking" && (
        <ImportQuestion
          plan={importState.plan}
          onChange={(plan) => onImportState({ is: "asking", plan })}
          onLeave={() => onImportState({ is: "refused", reason: "Nothing was imported." })}
          onImport={() =>
            void importAll(session, importState.plan).then(onImportState).then(onChange)
          }
        />
      )}
    </section>
  );
}

async function saveWhole({ parts }: Session): Promise<string> {
  try {
    const files = await shelfFiles(parts.shelf, parts.shop.getState()?.sticks.owned);
    const day = new Date(parts.now()).toISOString().slice(0, 10);
    files.forEach((file, i) => {
      const part = files.length > 1 ? `-${i + 1}-of-${files.length}` : "";
      saveJson(`rimwright-shelf-${day}${part}.json`, file);
    });
    return files.length > 1 ? `Saved as ${files.length} files.` : "Saved as a file.";
  } catch {
    return "The browser would not give the shelf out; try again.";
  }
}

/** Brings a file to the shelf, and tells what became of it. */
export const importAll = (session: Session, plan: ImportPlan): Promise<ImportState> =>
  runImport(session, plan).then(
    (done) => ({ is: "done", done }),
    () => ({ is: "refused", reason: untaken }),
  );

const untaken =
  "The browser would not save the instruments: it may be out of room. Nothing was changed.";
