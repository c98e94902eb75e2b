/** Where a browser stores texts between visits; `Storage` is one. */
export interface TextStorage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

const nowhere: TextStorage = { getItem: () => null, setItem: () => {} };

/** What the browser stores for every tab; nothing where it refuses. */
export const browserStorage = (): TextStorage => granted(() => window.localStorage);

/** What this tab stores over a reload, and a new tab finds from the last that wrote. */
export function tabStorage(): TextStorage {
  const [tab, every] = [granted(() => window.sessionStorage), browserStorage()];
  return {
    getItem: (key) => tab.getItem(key) ?? every.getItem(key),
    setItem: (key, value) => {
      tab.setItem(key, value);
      every.setItem(key, value);
    },
  };
}

/** Whether this tab has stored this before: it was loaded again, and is no new one. */
export const isTabsOwn = (key: string): boolean =>
  granted(() => window.sessionStorage).getItem(key) !== null;

function granted(storage: () => Storage): TextStorage {
  try {
    return storage();
  } catch {
    return nowhere;
  }
}
