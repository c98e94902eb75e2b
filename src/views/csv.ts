/** Text, a number, or null where there is none to give. */
export type Cell = string | number | null;

export type Row = readonly Cell[];

/** Comma-separated values (RFC 4180), opened by the mark by which a spreadsheet knows UTF-8. */
export const csvOf = (rows: readonly Row[]): string =>
  `\uFEFF${rows.map((row) => row.map((cell) => quoted(plain(cell))).join(",")).join("\r\n")}\r\n`;

/** Tab-separated, as a spreadsheet takes it from the clipboard. */
export const tabSeparated = (rows: readonly Row[]): string =>
  rows
    .map((row) => row.map((cell) => plain(cell).replace(/[\t\r\n]+/g, " ")).join("\t"))
    .join("\n");

/** A text that a spreadsheet would take for a formula gets an apostrophe before it, which makes it text. */
function plain(cell: Cell): string {
  if (typeof cell !== "string") return cell === null ? "" : String(cell);
  return /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
}

const quoted = (cell: string): string =>
  /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
