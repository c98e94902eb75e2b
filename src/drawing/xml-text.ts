/** What no XML text may hold, whatever stands round it: control signs but tab and line ends, and half a pair. */
const unfit = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

/** A text as it stands in XML, between tags or in quotes; what XML has no sign for is left out. */
export const xmlText = (text: string): string =>
  text
    .replace(unfit, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
