import type { Instrument } from "../../instrument/instrument.ts";
import { presets } from "../../instrument/presets.ts";

/** The invented instruments there are to start from. */
export function StartList({ onStart }: { readonly onStart: (preset: Instrument) => void }) {
  return (
    <ul>
      {presets.map((preset) => (
        <li key={preset.id}>
          <button type="button" onClick={() => onStart(preset)}>
            <strong>{preset.name}</strong>
            <span>{preset.notes}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
