/**
 * Puts a text on the clipboard, one that is yet to come too: some browsers want to be asked within the
 * tap. Whether it did; a plain http address gives a page no clipboard.
 */
export async function copyText(text: Promise<string>): Promise<boolean> {
  try {
    const { clipboard } = navigator;
    if (typeof ClipboardItem === "undefined") await clipboard.writeText(await text);
    else await clipboard.write([new ClipboardItem({ "text/plain": text.then(plain) })]);
    return true;
  } catch {
    return false;
  }
}

const plain = (text: string): Blob => new Blob([text], { type: "text/plain" });
