import { afterEach, expect, test, vi } from "vitest";
import { copyText } from "../../src/views/copy-text.ts";

afterEach(() => {
  vi.unstubAllGlobals();
});

const withClipboard = (clipboard: object | undefined): void => {
  vi.stubGlobal("navigator", { clipboard });
};

interface Items {
  readonly "text/plain": Promise<Blob>;
}

test("the clipboard is asked before the text is there: a tap's permission does not last", async () => {
  const written: Promise<Blob>[] = [];
  const write = vi.fn(async (items: readonly { readonly data: Items }[]) => {
    written.push(...items.map(({ data }) => data["text/plain"]));
    await Promise.all(written);
  });
  withClipboard({ write });
  vi.stubGlobal(
    "ClipboardItem",
    class {
      readonly data: Items;
      constructor(data: Items) {
        this.data = data;
      }
    },
  );
  let come = (_: string): void => {};
  const copied = copyText(
    new Promise((resolve) => {
      come = resolve;
    }),
  );
  expect(write).toHaveBeenCalledTimes(1);
  come("an address");
  expect(await copied).toBe(true);
  expect(await (await written[0])?.text()).toBe("an address");
});

test("a browser without items is given the text itself", async () => {
  const writeText = vi.fn(async () => {});
  withClipboard({ writeText });
  vi.stubGlobal("ClipboardItem", undefined);
  expect(await copyText(Promise.resolve("an address"))).toBe(true);
  expect(writeText).toHaveBeenCalledWith("an address");
});

test("with no clipboard, or one that refuses, it says that it did not", async () => {
  vi.stubGlobal("ClipboardItem", undefined);
  withClipboard(undefined);
  expect(await copyText(Promise.resolve("an address"))).toBe(false);
  withClipboard({ writeText: () => Promise.reject(new Error("NotAllowed")) });
  expect(await copyText(Promise.resolve("an address"))).toBe(false);
});
