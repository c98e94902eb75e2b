import { Suspense } from "react";
import type { Store } from "../store/store.ts";
import "./look.css";
import "./page.css";
import { Fence } from "./fence.tsx";
import { Header } from "./header.tsx";
import { StoreContext } from "./store-context.ts";
import { useOpenView } from "./use-open-view.ts";
import "./print.css";

export function App({ store }: { store: Store }) {
  const { id, name, Body } = useOpenView();
  return (
    <StoreContext value={store}>
      <Header />
      <Fence key={id} what={`The ${name} view`}>
        <Suspense fallback={<p className="loading">Opening {name}…</p>}>
          <Body />
        </Suspense>
      </Fence>
    </StoreContext>
  );
}
