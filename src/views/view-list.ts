import { type ComponentType, lazy } from "react";
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

/** The views there are, the default first. A view that is not needed at once is a `lazy` one. */
export const views: readonly View[] = [layout, bench];

/** The view an address names, or the default. */
export function viewAt(hash: string): View {
  return views.find(({ id }) => hash === `#/${id}`) ?? layout;
}
