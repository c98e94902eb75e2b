import { lazy, Suspense } from "react";
import type { Store } from "../../store/document/store.ts";
import type { ShelfSlotStore } from "../../store/shelf/shelf-slot.ts";
import "./look.css";
import "./page.css";
import { Fence } from "../error-boundary.tsx";
import { ShelfSlotContext, StoreContext } from "../store-context.ts";
import { Header } from "./header.tsx";
import { useOpenView } from "./view-list.tsx";
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
