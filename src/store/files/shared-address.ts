/** What an address's fragment begins with when an instrument follows. */
export const openMark = "#/open/";

/** The shared text in an address's fragment; null when it holds none. */
export const sharedIn = (hash: string): string | null =>
  hash.startsWith(openMark) ? hash.slice(openMark.length) : null;
