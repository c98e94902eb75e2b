import { type ComponentType, lazy } from "react";
import { lateView } from "./late-view.tsx";
import { LayoutView } from "./layout/layout-view.tsx";

export interface View {
  /** Its place in the address, `#/layout`. */
  readonly id: string;
  readonly name: string;
  readonly Body: ComponentType;
}

const layout: View = { id: "layout", name: "Layout", Body: LayoutView };

const bench: View = {
  id: "bench",
  name: "Bench",
  Body: lazy(() =>
    import("./bench/bench-view.tsx").then(({ BenchView }) => ({ default: BenchView })),
  ),
};

const compare: View = {
  id: "compare",
  name: "Compare",
  Body: lazy(() =>
    import("./compare/compare-view.tsx").then(({ CompareView }) => ({ default: CompareView })),
  ),
};

const rim: View = {
  id: "rim",
  name: "Rim",
  Body: lazy(() => import("./rim/rim-view.tsx").then(({ RimView }) => ({ default: RimView }))),
};

const sheet: View = {
  id: "sheet",
  name: "Sheet",
  Body: lazy(() =>
    import("./sheet/sheet-view.tsx").then(({ SheetView }) => ({ default: SheetView })),
  ),
};

const shelf: View = {
  id: "shelf",
  name: "Shelf",
  Body: lateView("Shelf", () =>
    import("./shelf/shelf-view.tsx").then(({ ShelfView }) => ShelfView),
  ),
};

/** The views there are, the default first. A view that is not needed at once is a `lazy` one. */
export const views: readonly View[] = [layout, compare, rim, bench, sheet, shelf];

/** The view an address names, or the default. */
export function viewAt(hash: string): View {
  return views.find(({ id }) => hash === `#/${id}`) ?? layout;
}
