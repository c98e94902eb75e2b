import type { Units } from "../../instrument/length.ts";
import { textLimits } from "../../instrument/text-limits.ts";
import { chooseUnits } from "../../store/document/choices.ts";
import { rename } from "../../store/document/edits.ts";
import { useEdit, useRimwright } from "../store-context.ts";
import { HeaderTools } from "./header-tools.tsx";
import { StartFrom } from "./start-from.tsx";
import { useOpenView, views } from "./view-list.tsx";

const choices: readonly (readonly [Units, string, string])[] = [
  ["mm", "mm", "Millimetres"],
  ["in", "in", "Inches, decimal"],
  ["in-fraction", "1/64 in", "Inches in fractions, to 1/64"],
];

/** How lengths are shown. It changes no stored value. */
function UnitsSwitch() {
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  return (
    <fieldset className="switch">
      <legend className="unseen">Units shown</legend>
      {choices.map(([choice, sign, name]) => (
        <button
          key={choice}
          type="button"
          aria-pressed={units === choice}
          aria-label={name}
          onClick={() => edit((state) => chooseUnits(state, choice))}
        >
          {sign}
        </button>
      ))}
    </fieldset>
  );
}

export function Header() {
  return (
    <header className="header">
      <h1 className="mark">Rimwright</h1>
      <ViewLinks />
      <NameField />
      <HeaderTools />
      <StartFrom />
      <UnitsSwitch />
    </header>
  );
}

function NameField() {
  const name = useRimwright((state) => state.instrument.name);
  const edit = useEdit();
  return (
    <input
      className="name"
      aria-label="Name of the instrument"
      value={name}
      maxLength={textLimits.name}
      placeholder="Unnamed instrument"
      onChange={({ target }) => edit((state) => rename(state, target.value))}
    />
  );
}

function ViewLinks() {
  const open = useOpenView();
  return (
    <nav className="view-links" aria-label="Views">
      {views.map(({ id, name }) => (
        <a key={id} href={`#/${id}`} aria-current={open.id === id ? "page" : undefined}>
          {name}
        </a>
      ))}
    </nav>
  );
}
