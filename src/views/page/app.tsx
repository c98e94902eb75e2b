import type { Store } from "../../store/document/store.ts";
import type { ShelfSlotStore } from "../../store/shelf/shelf-slot.ts";
import type { ShopStore } from "../../store/shelf/shop.ts";
import "./look.css";
import "./page.css";
import { BracesProvider } from "../fields/braces.tsx";
import { latePart } from "../late-part.tsx";
import { ShelfSlotContext, ShopContext, StoreContext } from "../store-context.ts";
import { Header } from "./header.tsx";
import { useOpenView } from "./view-list.tsx";
import "./print.css";

const PageTroubles = latePart({
  what: "What tells of saving, of shared addresses and of newer versions",
  load: () => import("./page-troubles.tsx").then(({ PageTroubles }) => PageTroubles),
});

interface Props {
  readonly store: Store;
  readonly shop: ShopStore;
  readonly slot: ShelfSlotStore;
}

export function App({ store, shop, slot }: Props) {
  const { id, Body } = useOpenView();
  return (
    <StoreContext value={store}>
      <ShopContext value={shop}>
        <ShelfSlotContext value={slot}>
          <BracesProvider>
            <Header />
            <PageTroubles />
            <Body key={id} />
          </BracesProvider>
        </ShelfSlotContext>
      </ShopContext>
    </StoreContext>
  );
}
