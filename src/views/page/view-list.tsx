import { type ComponentType, useSyncExternalStore } from "react";
import { ErrorBoundary } from "../error-boundary.tsx";
import { latePart } from "../late-part.tsx";
import { LayoutView } from "../layout/layout-view.tsx";

/** The view the address names, so that reload and back work. */
export function useOpenView(): View {
  return viewAt(useSyncExternalStore(watchAddress, () => window.location.hash));
}

function watchAddress(changed: () => void): () => void {
  window.addEventListener("hashchange", changed);
  return () => window.removeEventListener("hashchange", changed);
}

export interface View {
  /** Its place in the address, `#/layout`. */
  readonly id: string;
  readonly name: string;
  readonly Body: ComponentType;
}

const layout: View = {
  id: "layout",
  name: "Layout",
  Body: () => (
    <ErrorBoundary what="The Layout view">
      <LayoutView />
    </ErrorBoundary>
  ),
};

const lazyView = (name: string, load: () => Promise<ComponentType>): View => ({
  id: name.toLowerCase(),
  name,
  Body: latePart({
    what: `The ${name} view`,
    load,
    meanwhile: <p className="loading">Opening {name}…</p>,
  }),
});

const compare = lazyView("Compare", () =>
  import("../compare/compare-view.tsx").then(({ CompareView }) => CompareView),
);
const rim = lazyView("Rim", () => import("../rim/rim-view.tsx").then(({ RimView }) => RimView));
const bench = lazyView("Bench", () =>
  import("../bench/bench-view.tsx").then(({ BenchView }) => BenchView),
);
const sheet = lazyView("Sheet", () =>
  import("../sheet/sheet-view.tsx").then(({ SheetView }) => SheetView),
);
const shelf = lazyView("Shelf", () =>
  import("../shelf/shelf-view.tsx").then(({ ShelfView }) => ShelfView),
);
const sticks = lazyView("Sticks", () =>
  import("../sticks/sticks-view.tsx").then(({ SticksView }) => SticksView),
);

/** The views there are, the default first. What is not needed at once loads when opened. */
export const views: readonly View[] = [layout, compare, rim, bench, sheet, sticks, shelf];

/** Reached from the drawing that it explains, not from the header. */
const why = lazyView("Why", () => import("../why/why-view.tsx").then(({ WhyView }) => WhyView));

/** The view an address names, or the default. */
function viewAt(hash: string): View {
  return [...views, why].find(({ id }) => hash === `#/${id}`) ?? layout;
}
