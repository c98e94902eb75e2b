/** Hands a file to the browser to be saved. */
export function saveJson(name: string, json: unknown): void {
  const url = URL.createObjectURL(
    new Blob([JSON.stringify(json, null, 1)], { type: "application/json" }),
  );
  const link = document.createElement("a");
  link.href = url;
  link.download = name.replace(/[\\/:*?"<>|\p{Cc}]/gu, "-");
  link.click();
  // The browser takes the file after this turn.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
