import { Blob } from "node:buffer";
import { configure, render, screen, within } from "@testing-library/react";
import userEvent, { PointerEventsCheckLevel, type UserEvent } from "@testing-library/user-event";
import type { ReactNode } from "react";
import { vi } from "vitest";
import { firstState, type State } from "../../src/store/document/state.ts";
import { makeStore, type Store } from "../../src/store/document/store.ts";
import { makeShelfSlot } from "../../src/store/shelf/shelf-slot.ts";
import { firstShop, makeShopStore, type Shop, type ShopStore } from "../../src/store/shelf/shop.ts";
import { BracesProvider } from "../../src/views/fields/braces.tsx";
import { ShelfSlotContext, ShopContext, StoreContext } from "../../src/views/store-context.ts";
import { workerClient } from "../../src/worker/client.ts";
import { runJob } from "../../src/worker/jobs.ts";
import type { Job } from "../../src/worker/messages.ts";

// Looking through the styles of every element for what is hidden takes most of a test's time.
configure({ defaultHidden: true, asyncUtilTimeout: 20_000 });

export const newUser = (): UserEvent =>
  userEvent.setup({ pointerEventsCheck: PointerEventsCheckLevel.Never });

// Not there in jsdom.
Element.prototype.setPointerCapture = () => {};

/** Gives jsdom what the Sheet needs and it has not: style sheets made by script, and a blob's stream. */
export function stubPaper(): void {
  Object.assign(document, { adoptedStyleSheets: [] });
  vi.stubGlobal(
    "CSSStyleSheet",
    class {
      insertRule(): void {}
      replaceSync(): void {}
    },
  );
  vi.stubGlobal("Blob", Blob);
}

interface Shown {
  readonly store: Store;
  readonly shop: ShopStore;
}

/** A part of the page on stores of its own: the first visit's, unless others are given. */
export function showView(
  view: ReactNode,
  { state = firstState, shop = firstShop }: { readonly state?: State; readonly shop?: Shop } = {},
): Shown {
  const stores = { store: makeStore(state), shop: makeShopStore() };
  stores.shop.setState(shop, true);
  render(
    <StoreContext value={stores.store}>
      <ShopContext value={stores.shop}>
        <ShelfSlotContext value={makeShelfSlot()}>
          <BracesProvider>{view}</BracesProvider>
        </ShelfSlotContext>
      </ShopContext>
    </StoreContext>,
  );
  return stores;
}

/** Does the worker's jobs here and at once, and tells which were asked for. */
export function runJobsHere(): readonly Job[] {
  const asked: Job[] = [];
  vi.spyOn(workerClient, "run").mockImplementation((job, { onProgress }) => {
    asked.push(job);
    let stopped = false;
    void runJob(job, {
      report: (progress) => onProgress(progress as Parameters<typeof onProgress>[0]),
      pause: () => new Promise((resume) => setTimeout(resume)),
      stopped: () => stopped,
      now: () => performance.now(),
    });
    return () => {
      stopped = true;
    };
  });
  return asked;
}

export const entry = (name: string): HTMLInputElement =>
  screen.getByLabelText<HTMLInputElement>(name, { selector: "input" });

/** A tap on an entry, which selects what it holds, and new text over it. */
export async function typeOver(user: UserEvent, name: string, text: string): Promise<void> {
  await user.click(entry(name));
  await user.keyboard(text);
}

/** The texts of a table's row, in its order, without its heading. */
export function cellsOf(heading: string): readonly string[] {
  const row = screen.getByText(heading, { selector: "th[scope=row]" }).closest("tr");
  if (row === null) throw new Error(`${heading} stands in no row.`);
  return within(row)
    .getAllByRole("cell")
    .map((cell) => cell.textContent ?? "");
}
