/** A JSON text with one of its lists apart: the rest, and each of the list's items as text. */
export interface ListText {
  /** The text without the list's items. */
  readonly rest: string;
  readonly items: readonly string[];
}

/** Deepest nesting taken in. */
const deepest = 40;

/**
 * Takes the list under `key` of a JSON object's text apart without reading it, so that a large file can
 * be read item by item and no item can hold the page up. Null for a text that is cut short or nested
 * too deep. It does not find what else is wrong: whoever reads the pieces does.
 */
export function takeListApart(text: string, key: string): ListText | null {
  const quoted = JSON.stringify(key);
  const items: string[] = [];
  let [list, end, from] = [-1, -1, -1];
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === quote) {
      const close = closingQuote(text, i);
      if (close < 0) return null;
      if (depth === 1 && list < 0 && text.startsWith(quoted, i)) list = listAfter(text, close + 1);
      i = close;
    } else if (code === openBrace || code === openBracket) {
      depth += 1;
      if (depth > deepest) return null;
      if (i === list) from = i + 1;
    } else if (code === closeBrace || code === closeBracket) {
      depth -= 1;
      if (from >= 0 && depth === 1) {
        const last = text.slice(from, i);
        if (items.length > 0 || last.trim() !== "") items.push(last);
        [end, from] = [i, -1];
      }
    } else if (code === comma && from >= 0 && depth === 2) {
      items.push(text.slice(from, i));
      from = i + 1;
    }
  }
  if (depth !== 0) return null;
  return { rest: end < 0 ? text : text.slice(0, list + 1) + text.slice(end), items };
}

const [quote, backslash, comma] = [34, 92, 44];
const [openBracket, closeBracket, openBrace, closeBrace] = [91, 93, 123, 125];

function closingQuote(text: string, open: number): number {
  for (let i = open + 1; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === backslash) i += 1;
    else if (code === quote) return i;
  }
  return -1;
}

/** Where the list after a colon begins; −1 when none does. */
function listAfter(text: string, from: number): number {
  const gap = /\s*:\s*\[/y;
  gap.lastIndex = from;
  return gap.test(text) ? gap.lastIndex - 1 : -1;
}
