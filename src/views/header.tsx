import { lazy, Suspense } from "react";
import { textLimits } from "../instrument/schema.ts";
import { rename } from "../store/edits.ts";
import { StartFrom } from "./start-from.tsx";
import { useAct, useRimwright } from "./store-context.ts";
import { UnitsSwitch } from "./units-switch.tsx";
import { useOpenView } from "./use-open-view.ts";
import { views } from "./view-list.tsx";

const HeaderTools = lazy(() =>
  import("./header-tools.tsx").then(({ HeaderTools: Body }) => ({ default: Body })),
);

export function Header() {
  return (
    <header className="header">
      <h1 className="mark">Rimwright</h1>
      <NameField />
      {views.length > 1 && <ViewLinks />}
      <Suspense fallback={<div className="header-tools" />}>
        <HeaderTools />
      </Suspense>
      <StartFrom />
      <UnitsSwitch />
    </header>
  );
}

function NameField() {
  const name = useRimwright((state) => state.instrument.name);
  const act = useAct();
  return (
    <input
      className="name"
      aria-label="Name of the instrument"
      value={name}
      maxLength={textLimits.name}
      placeholder="Unnamed instrument"
      onChange={({ target }) => act((state) => rename(state, target.value))}
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
