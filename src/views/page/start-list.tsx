import { cutawayPresets } from "../../instrument/cutaway-presets.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { presets } from "../../instrument/presets.ts";
import { roundIn } from "../../instrument/round-in-inches.ts";
import { useRimwright } from "../store-context.ts";

/** The invented instruments there are to start from. */
export function StartList({ onStart }: { readonly onStart: (preset: Instrument) => void }) {
  const units = useRimwright((state) => state.choices.units);
  return (
    <ul>
      {[...presets, ...cutawayPresets].map((preset) => (
        <li key={preset.id}>
          <button type="button" onClick={() => onStart(roundIn(preset, units))}>
            <strong>{preset.name}</strong>
            <span>{preset.notes}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
