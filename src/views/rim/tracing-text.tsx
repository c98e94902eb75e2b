import { useId, useState } from "react";

interface Props {
  readonly text: string;
  readonly onText: (text: string) => void;
}

/** A drawing pasted, or read from a file on this device. Nothing leaves it. */
export function TracingText({ text, onText }: Props) {
  const id = useId();
  const [file, setFile] = useState("");
  const open = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return;
    onText(await chosen.text());
    setFile(chosen.name);
  };
  return (
    <div className="rim-source">
      <label htmlFor={`${id}-file`}>A file, .csv or .svg</label>
      <input
        id={`${id}-file`}
        type="file"
        accept=".csv,.txt,.svg,text/csv,text/plain,image/svg+xml"
        onChange={({ target }) => void open(target.files?.[0])}
      />
      <label htmlFor={`${id}-text`}>Or paste it here</label>
      <textarea
        id={`${id}-text`}
        rows={3}
        spellCheck={false}
        placeholder="0, 0&#10;5.4, 56.0&#10;17.1, 97.2"
        value={text.length > shown ? `${text.slice(0, shown)}…` : text}
        readOnly={text.length > shown}
        onChange={({ target }) => {
          setFile("");
          onText(target.value);
        }}
      />
      {text !== "" && (
        <button
          type="button"
          onClick={() => {
            setFile("");
            onText("");
          }}
        >
          Clear {file === "" ? "the drawing" : file}
        </button>
      )}
    </div>
  );
}

/** A longer text is shown in part, and is not edited by hand. */
const shown = 20_000;
