import { type BrowserContext, type CDPSession, expect, type Page } from "@playwright/test";
import { expectDrawn, field } from "./layout-screen.ts";
import { test } from "./page.ts";
import {
  files,
  instruments,
  nameField,
  namesOn,
  openShelf,
  pick,
  row,
  saveAs,
  savedBy,
  savingWord,
  shelfFile,
  trouble,
} from "./shelf-screen.ts";

test("no room: it is said, nothing typed is lost over a reload, and it is saved when there is room", async ({
  page,
  baseURL,
}) => {
  const devtools = await page.context().newCDPSession(page);
  await giveRoom(devtools, baseURL, 2_000_000);
  await page.goto("/");
  await saveAs(page, "Full up", "480");
  await fillUp(page);
  await field(page, "Body length").fill("481");
  await expect(trouble(page)).toContainText("The browser would not take the last change");
  await expect(savingWord(page)).toHaveText("not saved");
  await page.reload();
  await expect(field(page, "Body length")).toHaveValue("481");
  await expect(trouble(page)).toContainText("The browser would not take the last change");
  await openShelf(page);
  await pick(page, shelfFile({ name: "No room for this" }));
  await expect(files(page)).toContainText("Nothing was changed");
  expect(await namesOn(page)).toEqual(["Full up"]);

  await giveRoom(devtools, baseURL);
  await page.goto("./#/layout");
  await field(page, "Body length").fill("482");
  await expect(savingWord(page)).toHaveText("saved");
  await expect(trouble(page)).toHaveCount(0);
  expect(await lengthKept(page, "Full up")).toBe(482);
});

test("a browser that keeps nothing: it is said, and the page works all the same", async ({
  page,
}) => {
  await page.addInitScript(() => {
    const refuse = (): never => {
      throw new DOMException("refused", "SecurityError");
    };
    Object.defineProperty(window, "localStorage", { get: refuse });
    Object.defineProperty(window, "sessionStorage", { get: refuse });
    indexedDB.open = refuse;
  });
  await page.goto("/");
  await expect(trouble(page)).toContainText("This browser keeps nothing for this page");
  await field(page, "Body length").fill("481");
  await expectDrawn(page);
  await page.getByRole("link", { name: "Shelf", exact: true }).click();
  await expect(page.getByRole("main")).toContainText("keeps nothing");
  await page.getByRole("link", { name: "Layout", exact: true }).click();
  await expect(field(page, "Body length")).toHaveValue("481");
});

test("an older page in another tab holds the shelf: it is said, and what was typed is saved once it lets go", async ({
  page,
  context,
  baseURL,
}) => {
  const older = await plainPage(context, baseURL);
  await older.evaluate(
    () =>
      new Promise<void>((opened) => {
        const asked = indexedDB.open("rimwright", 1);
        asked.onupgradeneeded = () => {
          for (const name of ["entries", "cards", "aside"])
            asked.result.createObjectStore(name, { keyPath: "id" });
        };
        // Held, as an old page holds it that does not make way.
        asked.onsuccess = () => opened();
      }),
  );
  await page.goto("/");
  await expect(trouble(page)).toContainText("Another tab holds the shelf with an older Rimwright");
  await nameField(page).fill("Waited");
  await field(page, "Body length").fill("481");
  await older.close();
  await expect(trouble(page)).toHaveCount(0);
  await expect(field(page, "Body length")).toHaveValue("481");
  await field(page, "Body length").fill("482");
  await expect(savingWord(page)).toHaveText("saved");
  expect(await lengthKept(page, "Waited")).toBe(482);
});

test("a newer page takes the shelf: the older one says so and writes no more, now or after a reload", async ({
  page,
  context,
  baseURL,
}) => {
  await page.clock.install();
  await page.goto("/");
  await saveAs(page, "Before", "480");
  const newer = await plainPage(context, baseURL);
  await newer.evaluate(
    () =>
      new Promise<void>((opened, failed) => {
        const asked = indexedDB.open("rimwright", 99);
        asked.onsuccess = () => opened();
        asked.onerror = () => failed(asked.error);
      }),
  );
  await expect(trouble(page)).toContainText("A newer Rimwright has taken over the shelf");
  await field(page, "Body length").fill("481");
  await expect(savingWord(page)).toHaveText("not saved");
  await page.clock.fastForward(pastAnySave);
  expect(await lengthKept(newer, "Before", 99)).toBe(480);

  await page.reload();
  await expect(trouble(page)).toContainText("A newer Rimwright has the shelf");
  await expect(field(page, "Body length")).toHaveValue("481");
  await field(page, "Body length").fill("482");
  await page.clock.fastForward(pastAnySave);
  expect(await lengthKept(newer, "Before", 99)).toBe(480);
});

test("a record that cannot be read is set aside whole, and the rest of the shelf opens", async ({
  page,
}) => {
  await openShelf(page);
  await pick(page, shelfFile({ id: "good", name: "Good" }, { id: "broken", name: "Broken" }));
  await expect(row(page, "Broken")).toBeVisible();
  const garbage = { id: "broken", version: 2, work: { instrument: "\u0000?", lastGood: [1, 2] } };
  await writeRaw(page, "entries", garbage);
  await page.reload();
  await row(page, "Broken").getByRole("button", { name: /^Open/ }).click();
  await expect(instruments(page)).toContainText("cannot be read");
  const aside = page.getByRole("region", { name: "Could not be read" });
  const out = await savedBy(page, () =>
    aside.getByRole("button", { name: "Save to a file" }).click(),
  );
  expect(JSON.parse(out.text)).toEqual(garbage);
  expect(await namesOn(page)).toEqual(["Good"]);
  await row(page, "Good").getByRole("button", { name: /^Open/ }).click();
  await expect(nameField(page)).toHaveValue("Good");
});

test("garbage in all that is kept: the page opens, the shelf too, and edits are saved", async ({
  page,
}) => {
  await openShelf(page);
  await pick(page, shelfFile({ id: "good", name: "Good" }));
  await expect(row(page, "Good")).toBeVisible();
  for (const [i, value] of [null, 7, "text", [], {}, { name: 5, savedAt: "then" }].entries()) {
    await writeRaw(page, "cards", { ...Object(value), id: `card ${i}` });
    await writeRaw(page, "entries", { ...Object(value), id: `card ${i}` });
  }
  for (const text of ["{", "[]", "7", '{"version":2}', '{"version":2,"lastGood":{},"stamp":9}']) {
    await page.evaluate((kept) => {
      for (const key of ["rimwright", "rimwright-saved", "rimwright-bench", "rimwright-compare"]) {
        localStorage.setItem(key, kept);
        sessionStorage.setItem(key, kept);
      }
      // What is on screen must not be written over it at leaving.
      Storage.prototype.setItem = () => {};
    }, text);
    await page.goto("about:blank");
    await page.goto("./#/layout");
    await expectDrawn(page);
  }
  await saveAs(page, "After all", "481");
  await openShelf(page);
  await expect(row(page, "Good")).toBeVisible();
  await expect(row(page, "After all")).toBeVisible();
});

test("a clock set back loses no edit and puts nothing older in its place", async ({
  page,
  context,
}) => {
  await page.goto("/");
  await saveAs(page, "Timeless", "480");
  await page.clock.setFixedTime("2001-01-01T00:00:00Z");
  await field(page, "Body length").fill("481");
  await expect(savingWord(page)).toHaveText("saved");
  const other = await context.newPage();
  await other.goto("/");
  await expect(field(other, "Body length")).toHaveValue("481");
  await other.close();
  await page.reload();
  await expect(field(page, "Body length")).toHaveValue("481");
  await expect(trouble(page)).toHaveCount(0);
  expect(await lengthKept(page, "Timeless")).toBe(481);
});

test("two tabs race on one instrument: both end on one state, and what yielded is one undo away", async ({
  page,
  context,
}) => {
  await page.goto("/");
  await saveAs(page, "Raced", "480");
  const other = await context.newPage();
  await other.goto("/");
  await expect(nameField(other)).toHaveValue("Raced");
  await field(page, "Body length").fill("481");
  await expect(field(other, "Body length")).toHaveValue("481");

  let lost = 0;
  const rounds = 10;
  for (let i = 0; i < rounds; i += 1) {
    const [ours, theirs] = [`${500 + i}`, `${600 + i}`];
    await Promise.all([typeAtOnce(page, ours), typeAtOnce(other, theirs)]);
    for (const tab of [page, other]) await expect(savingWord(tab)).toHaveText("saved");
    await expect
      .poll(async () => new Set(await Promise.all([page, other].map(lengthShown))).size)
      .toBe(1);
    const stands = await lengthShown(page);
    expect([ours, theirs]).toContain(stands);
    const yielded = stands === ours ? theirs : ours;
    const kept = await pastLengths(page, "Raced");
    if (!kept.includes(Number(yielded))) {
      const yielding = stands === ours ? other : page;
      await expect(trouble(yielding)).toContainText("yours is one undo away");
      await yielding.getByRole("button", { name: "Undo" }).click();
      if ((await lengthShown(yielding)) !== yielded) lost += 1;
      await yielding.getByRole("button", { name: "Redo" }).click();
      await expect(savingWord(yielding)).toHaveText("saved");
    }
  }
  console.log(`two tabs racing: ${rounds} rounds tried, ${lost} edits lost`);
  expect(lost).toBe(0);
});

test("the shelf cleared under the page: it is said, and what is on screen stays over a reload", async ({
  page,
  baseURL,
}) => {
  await page.goto("/");
  await saveAs(page, "Cleared", "480");
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Storage.clearDataForOrigin", {
    origin: new URL(baseURL ?? "").origin,
    storageTypes: "indexeddb",
  });
  await field(page, "Body length").fill("481");
  await expect(trouble(page)).toBeVisible();
  await expect(savingWord(page)).toHaveText("not saved");
  await page.reload();
  await expect(field(page, "Body length")).toHaveValue("481");
  await field(page, "Body length").fill("482");
  await expect(savingWord(page)).toHaveText("saved");
});

/** Beyond the pause between an edit and its save, ms. */
const pastAnySave = 1000;

const lengthShown = (page: Page): Promise<string> => field(page, "Body length").inputValue();

/** Limits what the browser gives the page; without a size, as before. */
async function giveRoom(devtools: CDPSession, baseURL = "", quotaSize?: number): Promise<void> {
  const { origin } = new URL(baseURL);
  const size = quotaSize === undefined ? {} : { quotaSize };
  await devtools.send("Storage.overrideQuotaForOrigin", { origin, ...size });
}

/** Takes all the room that is left, in a database of its own. */
const fillUp = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((full, failed) => {
        const asked = indexedDB.open("filler", 1);
        asked.onerror = () => failed(asked.error);
        asked.onupgradeneeded = () =>
          asked.result.createObjectStore("bytes", { autoIncrement: true });
        asked.onsuccess = () => put(200_000);
        const put = (size: number): void => {
          const act = asked.result.transaction("bytes", "readwrite");
          act
            .objectStore("bytes")
            .put(crypto.getRandomValues(new Uint8Array(Math.min(size, 65_536))));
          act.oncomplete = () => put(size);
          act.onabort = () => (size > 500 ? put(size / 4) : full());
        };
      }),
  );

/** A page of the origin that runs nothing of ours. */
async function plainPage(context: BrowserContext, baseURL: string | undefined): Promise<Page> {
  const page = await context.newPage();
  const address = new URL("./plain", baseURL).href;
  await page.route(address, (route) =>
    route.fulfill({ contentType: "text/html", body: '<link rel="icon" href="data:,">' }),
  );
  await page.goto(address);
  return page;
}

interface Kept {
  readonly work: {
    readonly instrument: { readonly name: string; readonly body: { length: number } };
  };
  readonly history: { readonly past: readonly Kept["work"][] };
}

/** What the database holds under a name, read past the page's own code. */
const kept = (page: Page, name: string, version?: number): Promise<Kept | undefined> =>
  page.evaluate(
    ([wanted, at]) =>
      new Promise<Kept | undefined>((found, failed) => {
        const asked = indexedDB.open("rimwright", at);
        asked.onerror = () => failed(asked.error);
        asked.onsuccess = () => {
          const all = asked.result.transaction("entries").objectStore("entries").getAll();
          all.onsuccess = () => {
            asked.result.close();
            found((all.result as Kept[]).find(({ work }) => work.instrument.name === wanted));
          };
        };
      }),
    [name, version] as const,
  );

const lengthKept = async (
  page: Page,
  name: string,
  version?: number,
): Promise<number | undefined> => (await kept(page, name, version))?.work.instrument.body.length;

const pastLengths = async (page: Page, name: string): Promise<readonly number[]> =>
  (await kept(page, name))?.history.past.map(({ instrument }) => instrument.body.length) ?? [];

/** Writes into the database past the page's own code. */
const writeRaw = (page: Page, store: string, value: unknown): Promise<void> =>
  page.evaluate(
    ([into, what]) =>
      new Promise<void>((written, failed) => {
        const asked = indexedDB.open("rimwright");
        asked.onsuccess = () => {
          const act = asked.result.transaction(into, "readwrite");
          act.objectStore(into).put(what);
          act.onerror = () => failed(act.error);
          act.oncomplete = () => {
            asked.result.close();
            written();
          };
        };
      }),
    [store, value] as const,
  );

/** Types over Body length in one act: the other tab's number must not come between selecting and typing. */
const typeAtOnce = (page: Page, text: string): Promise<void> =>
  field(page, "Body length").evaluate((input: HTMLInputElement, typed) => {
    input.focus();
    input.select();
    document.execCommand("insertText", false, typed);
  }, text);
