import { lazy, Suspense } from "react";
import type { Store } from "../../store/document/store.ts";
import type { ShelfSlotStore } from "../../store/shelf/shelf-slot.ts";
import type { ShopStore } from "../../store/shelf/shop.ts";
import "./look.css";
import "./page.css";
import { ErrorBoundary } from "../error-boundary.tsx";
import { BracesProvider } from "../fields/braces.tsx";
import { ShelfSlotContext, ShopContext, StoreContext } from "../store-context.ts";
import { Header } from "./header.tsx";
import { useOpenView } from "./view-list.tsx";
import "./print.css";

const PageTroubles = lazy(() =>
  import("./page-troubles.tsx").then(({ PageTroubles: Body }) => ({ default: Body })),
);

interface Props {
  readonly store: Store;
  readonly shop: ShopStore;
  readonly slot: ShelfSlotStore;
}

export function App({ store, shop, slot }: Props) {
  const { id, name, body } = useOpenView();
  return (
    <StoreContext value={store}>
      <ShopContext value={shop}>
        <ShelfSlotContext value={slot}>
          <BracesProvider>
            <Header />
            <Suspense>
              <PageTroubles />
            </Suspense>
            <ErrorBoundary key={id} what={`The ${name} view`}>
              {body}
            </ErrorBoundary>
          </BracesProvider>
        </ShelfSlotContext>
      </ShopContext>
    </StoreContext>
  );
}
