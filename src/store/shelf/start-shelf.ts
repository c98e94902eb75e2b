import type { Store } from "../document/store.ts";
import { browserStorage, tabStorage } from "./browser-storage.ts";
import type { EarlyEdits } from "./left-early.ts";
import { Session } from "./session.ts";
import type { SavedMessage } from "./session-machine.ts";
import { Shelf } from "./shelf.ts";
import { openShelfDatabase } from "./shelf-database.ts";
import type { ShelfSlotStore } from "./shelf-slot.ts";
import type { ShopStore } from "./shop.ts";
import { openShop } from "./shop-storage.ts";
import { askToLast } from "./storage-room.ts";
import { withValidParts } from "./valid-parts.ts";

interface Stores {
  readonly store: Store;
  /** Gives what was edited before this, and watches no more. */
  readonly takeEarly: () => EarlyEdits;
  readonly shop: ShopStore;
  readonly slot: ShelfSlotStore;
}

/** Opens the shop and the shelf, and keeps the page's open instrument there. Where the browser keeps nothing, the page works without. */
export async function startShelf({ store, takeEarly, shop, slot }: Stores): Promise<void> {
  openShop(shop, browserStorage(), store);
  store.setState(withValidParts);
  try {
    const tabs = new BroadcastChannel("rimwright");
    let session: Session | null = null;
    const database = await openShelfDatabase({
      superseded: () => session?.supersede(),
      blocked: () => slot.setState({ is: "blocked" }, true),
    });
    const shelf = new Shelf(database);
    session = new Session({
      store,
      early: takeEarly(),
      shop,
      shelf,
      tell: ({ id, revision }) => tabs.postMessage({ id, revision }),
      storage: tabStorage(),
      now: Date.now,
      firstSave: () => void askToLast(navigator.storage),
    });
    const opened = session;
    tabs.addEventListener("message", ({ data }) => {
      if (isSavedMessage(data)) void opened.onSaved(data);
    });
    addEventListener("pagehide", () => void opened.flush());
    addEventListener("visibilitychange", () => void opened.flush());
    await opened.start();
    slot.setState({ is: "open", shelf, session: opened }, true);
  } catch (fault) {
    const newer = fault instanceof DOMException && fault.name === "VersionError";
    slot.setState({ is: newer ? "newer" : "shut" }, true);
  }
}

function isSavedMessage(data: unknown): data is SavedMessage {
  return (
    typeof data === "object" &&
    data !== null &&
    "id" in data &&
    typeof data.id === "string" &&
    "revision" in data &&
    typeof data.revision === "number"
  );
}
