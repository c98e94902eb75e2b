import { sameEditId } from "../document/edit-id.ts";
import { firstState } from "../document/state.ts";
import type { Store } from "../document/store.ts";
import { browserStorage, isTabsOwn, tabStorage } from "./browser-storage.ts";
import { goesOnWith } from "./last-shown.ts";
import type { EarlyEdits } from "./left-early.ts";
import { shownInTabCopy } from "./read-tab-copy.ts";
import { Session } from "./session.ts";
import type { SavedMessage } from "./session-machine.ts";
import { Shelf } from "./shelf.ts";
import { openShelfDatabase } from "./shelf-database.ts";
import type { ShelfSlotStore } from "./shelf-slot.ts";
import type { ShopStore } from "./shop.ts";
import { openShop } from "./shop-storage.ts";
import { askToLast } from "./storage-room.ts";
import { tabKey } from "./tab-copy.ts";
import { tabCopyDamage } from "./tab-copy-damage.ts";
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
  const copied = shownInTabCopy(tabStorage());
  const isNewTab = !isTabsOwn(tabKey);
  const damage = tabCopyDamage(tabStorage());
  openShop(shop, browserStorage(), store, window);
  store.setState(withValidParts);
  try {
    const tabs = new BroadcastChannel("rimwright");
    let session: Session | null = null;
    const database = await openShelfDatabase({
      superseded: () => session?.supersede(),
      blocked: () => slot.setState({ is: "blocked" }, true),
    });
    const shelf = new Shelf(database);
    const before = goesOnWith(copied, await shelf.lastShown(), isNewTab);
    const early = takeEarly();
    session = new Session({
      store,
      early,
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
    if (damage !== null) await shelf.addUnreadable(damage);
    if (before !== undefined && before !== copied?.id && isAsLoaded(early, copied?.id))
      await opened.open(before);
    slot.setState({ is: "open", shelf, session: opened }, true);
  } catch (fault) {
    const newer = fault instanceof DOMException && fault.name === "VersionError";
    slot.setState({ is: newer ? "newer" : "shut" }, true);
  }
}

/** Whether the builder has done nothing yet: what is on screen is what was loaded, as it was. */
const isAsLoaded = ({ left, onScreen: { screen, base } }: EarlyEdits, id: string | undefined) =>
  left.length === 0 &&
  sameEditId(screen.editId, base) &&
  screen.instrument.id === (id ?? firstState.instrument.id);

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
