import { lazy, Suspense } from "react";
import type { ShelfSlotStore } from "../store/shelf-slot.ts";
import type { Store } from "../store/store.ts";
import "./look.css";
import "./page.css";
import { Fence } from "./fence.tsx";
import { Header } from "./header.tsx";
import { ShelfSlotContext } from "./shelf-slot-context.ts";
import { StoreContext } from "./store-context.ts";
import { useOpenView } from "./use-open-view.ts";
import "./print.css";

const PageTroubles = lazy(() =>
  import("./page-troubles.tsx").then(({ PageTroubles: Body }) => ({ default: Body })),
);

interface Props {
  readonly store: Store;
  readonly slot: ShelfSlotStore;
}

export function App({ store, slot }: Props) {
  const { id, name, body } = useOpenView();
  return (
    <StoreContext value={store}>
      <ShelfSlotContext value={slot}>
        <Header />
        <Suspense>
          <PageTroubles />
        </Suspense>
        <Fence key={id} what={`The ${name} view`}>
          {body}
        </Fence>
      </ShelfSlotContext>
    </StoreContext>
  );
}
