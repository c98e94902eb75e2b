/**
 * Reads comma-separated values as RFC 4180 has them and no other way: rows end in CRLF, a quoted field
 * doubles its quotes, and all rows are equally long. Written from the RFC, apart from what writes them.
 * Throws at the first fault.
 */
export function readCsv(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  let at = 0;
  while (at < text.length) {
    const field = /"((?:[^"]|"")*)"|([^",\r\n]*)/y;
    field.lastIndex = at;
    const [whole = "", inQuotes, bare = ""] = field.exec(text) ?? [];
    rows.at(-1)?.push(inQuotes === undefined ? bare : inQuotes.replaceAll('""', '"'));
    at += whole.length;
    if (text[at] === ",") at += 1;
    else if (text.startsWith("\r\n", at)) {
      at += 2;
      if (at < text.length) rows.push([]);
    } else throw new Error(`No comma and no end of a line at ${at}: ${text.slice(at, at + 20)}`);
  }
  if (rows.some((row) => row.length !== rows[0]?.length)) throw new Error("The rows differ.");
  return rows;
}
