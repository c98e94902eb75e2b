import type { Keeper } from "./keep.ts";

const forgetful: Keeper = { getItem: () => null, setItem: () => {} };

/** What the browser keeps between visits; nothing where it refuses. */
export const pageKeeper = (): Keeper => granted(() => window.localStorage);

/** What this tab keeps over a reload, and a new tab finds from the last that wrote. */
export function tabKeeper(): Keeper {
  const [tab, page] = [granted(() => window.sessionStorage), pageKeeper()];
  return {
    getItem: (key) => tab.getItem(key) ?? page.getItem(key),
    setItem: (key, value) => {
      tab.setItem(key, value);
      page.setItem(key, value);
    },
  };
}

function granted(storage: () => Storage): Keeper {
  try {
    return storage();
  } catch {
    return forgetful;
  }
}
