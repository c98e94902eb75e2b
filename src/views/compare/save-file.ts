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

/** A name in letters every file system takes. */
export function fileName(instrument: string, what: string, ending: string): string {
  const plain = instrument
    .normalize("NFKD")
    .replace(/[^\w]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60)
    .toLowerCase();
  return `${plain === "" ? "instrument" : plain}-${what}.${ending}`;
}
