/** A tag of a drawing's text as it comes, in order; the end of an element has `closes`. */
export interface SvgTag {
  readonly name: string;
  readonly closes: boolean;
  /** Has no content of its own: `<path/>`. */
  readonly alone: boolean;
  readonly attributes: ReadonlyMap<string, string>;
}

const tag = /<(\/?)([A-Za-z][\w:.-]*)((?:\s+[\w:.-]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>/y;
const attribute = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/**
 * The tags of an XML text, without making a document of it: a stranger's drawing is only ever read, and
 * neither its scripts nor its styles come before the browser.
 */
export function* svgTags(text: string): Generator<SvgTag> {
  let from = text.indexOf("<");
  while (from >= 0) {
    const skipped = passedOver(text, from);
    if (skipped !== null) {
      from = text.indexOf("<", skipped);
      continue;
    }
    tag.lastIndex = from;
    const met = tag.exec(text);
    const [whole = "", slash, name = "", inner = "", end] = met ?? [];
    if (met !== null) {
      yield {
        name: name.replace(/^svg:/, ""),
        closes: slash === "/",
        alone: end === "/",
        attributes: new Map(
          [...inner.matchAll(attribute)].map(([, key = "", a, b]) => [key, a ?? b ?? ""]),
        ),
      };
    }
    from = text.indexOf("<", from + Math.max(1, whole.length));
  }
}

const asides = [
  ["<!--", "-->"],
  ["<![CDATA[", "]]>"],
] as const;

/** Where a remark or raw text that starts here ends; null when none does. */
function passedOver(text: string, from: number): number | null {
  const aside = asides.find(([start]) => text.startsWith(start, from));
  if (aside === undefined) return null;
  const end = text.indexOf(aside[1], from);
  return end < 0 ? text.length : end;
}
