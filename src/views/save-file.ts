/** Hands the browser a text to save under a name. */
export function saveFile(name: string, type: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the click returns.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export const saveJson = (name: string, json: unknown): void =>
  saveFile(name, "application/json", JSON.stringify(json, null, 1));

/** As much of an instrument's name as goes into a file's, in letters: with the rest it stays under 255 bytes in any script. */
const longest = 60;

/** An instrument's name, what of it the file holds, and the ending, without a sign that some file system forbids. */
export function fileName(instrument: string, what: string, ending: string): string {
  const plain = [...instrument.normalize("NFC").replace(/[^\p{L}\p{M}\p{N}]+/gu, "-")]
    .slice(0, longest)
    .join("")
    .replace(/^-+|-+$/g, "")
    .toLowerCase();
  return `${plain === "" ? "instrument" : plain}-${what}.${ending}`;
}
