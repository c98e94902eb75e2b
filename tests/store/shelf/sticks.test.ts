import fc from "fast-check";
import { describe, expect, it, test, vi } from "vitest";
import { makeStore } from "../../../src/store/document/store.ts";
import { shelfFileOf } from "../../../src/store/files/shelf-file.ts";
import { mostSticks, type OwnedStick, readSticks } from "../../../src/store/files/sticks-form.ts";
import { shelfFiles } from "../../../src/store/shelf/export.ts";
import { runImport } from "../../../src/store/shelf/import.ts";
import {
  editShop,
  firstShop,
  makeShopStore,
  type OwnedSticks,
} from "../../../src/store/shelf/shop.ts";
import { openShop, readShop } from "../../../src/store/shelf/shop-storage.ts";
import {
  addStick,
  changeStick,
  importSticks,
  redoSticks,
  removeStick,
  undoSticks,
} from "../../../src/store/shelf/sticks.ts";
import { importPlanOf, memoryStorage, openShelf, openTab } from "../../support/tab.ts";

const none = firstShop.sticks;
const ash = { name: "Ash", thickness: 7.5, width: 20 };
const beech = { name: "Beech", thickness: 9, width: null };
const two = addStick(addStick(none, ash), beech);

const file = (json: unknown): Blob => new Blob([JSON.stringify(json)]);
const plain = ({ owned }: OwnedSticks) => owned.map(({ id: _, ...rest }) => rest);

type Edit = (sticks: OwnedSticks) => OwnedSticks;
const at = fc.nat(4);
const idAt = ({ owned }: OwnedSticks, i: number): string =>
  owned[i % (owned.length || 1)]?.id ?? "";
const edits = fc.array(
  fc.oneof(
    fc.double({ min: 0, max: 20, noNaN: true }).map(
      (thickness): Edit =>
        (sticks) =>
          addStick(sticks, { name: "", thickness, width: null }),
    ),
    at.map(
      (i): Edit =>
        (sticks) =>
          removeStick(sticks, idAt(sticks, i)),
    ),
    fc.tuple(at, fc.string()).map(
      ([i, name]): Edit =>
        (sticks) =>
          changeStick(sticks, idAt(sticks, i), { name }),
    ),
  ),
  { maxLength: 20 },
);

describe("the shop's sticks", () => {
  it("are back as they were after as many undos as there were steps, and after as many redos as they became", () => {
    fc.assert(
      fc.property(edits, (all) => {
        const after = all.reduce((sticks, edit) => edit(sticks), none);
        let back = after;
        while (back.past.length > 0) back = undoSticks(back);
        expect(back.owned).toEqual([]);
        while (back.future.length > 0) back = redoSticks(back);
        expect(back.owned).toEqual(after.owned);
        expect(undoSticks(none)).toBe(none);
        expect(redoSticks(after)).toBe(after);
      }),
    );
  });

  it("take a name typed letter by letter for one step, and another stick's for the next", () => {
    const [first, second] = two.owned.map(({ id }) => id) as [string, string];
    const typed = ["O", "Oa", "Oak"].reduce((so, name) => changeStick(so, first, { name }), two);
    expect(undoSticks(typed).owned).toEqual(two.owned);
    const other = changeStick(typed, second, { name: "Elm" });
    expect(undoSticks(other).owned).toEqual(typed.owned);
    // After an undo the same letters are a step of their own.
    expect(changeStick(undoSticks(typed), first, { name: "X" }).past).toHaveLength(3);
  });

  it("are no more than there is room for", () => {
    const many = Array.from({ length: mostSticks + 5 }).reduce<OwnedSticks>(
      (so) => addStick(so, ash),
      none,
    );
    expect(many.owned).toHaveLength(mostSticks);
    expect(importSticks(many, [{ ...beech, id: "new" }]).owned).toHaveLength(mostSticks);
  });
});

describe("stored between visits", () => {
  test("sticks with their undo, and what was tried, are found again", () => {
    const storage = memoryStorage();
    const shop = makeShopStore();
    openShop(shop, storage, makeStore(), new EventTarget());
    const trial = {
      stick: { thickness: 8.25, width: 18 },
      source: "shelf",
      ticked: ["a"],
    } as const;
    editShop(shop, (all) => ({ ...all, sticks: undoSticks(two), trial }));
    const next = makeShopStore();
    openShop(next, storage, makeStore(), new EventTarget());
    expect(next.getState()?.sticks).toEqual(undoSticks(two));
    expect(next.getState()?.trial).toEqual(trial);
  });

  test("a stick that is dragged is stored once the hand rests, or the page is left", () => {
    vi.useFakeTimers();
    const storage = memoryStorage();
    const tabs = new EventTarget();
    const shop = makeShopStore();
    openShop(shop, storage, makeStore(), tabs);
    const drag = (thickness: number): void =>
      editShop(shop, (all) => ({
        ...all,
        trial: { ...all.trial, stick: { thickness, width: null } },
      }));
    const stored = (): number =>
      readShop(JSON.parse(storage.getItem("rimwright-shop") ?? "0")).trial.stick.thickness;
    drag(8);
    drag(8.1);
    expect(storage.getItem("rimwright-shop")).toBeNull();
    vi.advanceTimersByTime(400);
    expect(stored()).toBe(8.1);
    drag(8.2);
    tabs.dispatchEvent(new Event("pagehide"));
    expect(stored()).toBe(8.2);
    drag(8.3);
    editShop(shop, (all) => ({ ...all, panel: "pull" }));
    expect(stored()).toBe(8.3);
    vi.useRealTimers();
  });

  test.each([
    [{ sticks: 5, trial: 5 }],
    [
      {
        sticks: { owned: [{ thickness: "7" }, null], past: [[1]], future: {} },
        trial: { stick: 1 },
      },
    ],
    [
      {
        sticks: { owned: [{ ...ash, id: "a", thickness: -1 }] },
        trial: { stick: { thickness: 1e9 } },
      },
    ],
    [
      {
        trial: { stick: { thickness: Number.NaN, width: "x" }, source: "moon", ticked: [1, null] },
      },
    ],
  ])("what cannot be read is as at first: %j", (json) => {
    const shop = readShop(json);
    expect(shop.sticks.owned).toEqual([]);
    expect(shop.trial.stick).toEqual(firstShop.trial.stick);
  });

  test("another tab's sticks are this one's too, and are not stored back", () => {
    const tabs = new EventTarget();
    const storage = memoryStorage();
    const shop = makeShopStore();
    openShop(shop, storage, makeStore(), tabs);
    const tell = (key: string, newValue: string | null): void => {
      tabs.dispatchEvent(Object.assign(new Event("storage"), { key, newValue }));
    };
    editShop(shop, (all) => ({ ...all, panel: "pull" }));
    const before = storage.getItem("rimwright-shop");
    tell("rimwright-shop", JSON.stringify({ ...firstShop, sticks: two }));
    expect(shop.getState()?.sticks.owned).toEqual(two.owned);
    expect(shop.getState()?.panel).toBe("pull");
    expect(storage.getItem("rimwright-shop")).toBe(before);
    for (const broken of ["{", "null", null]) tell("rimwright-shop", broken);
    tell("another", JSON.stringify(firstShop));
    expect(shop.getState()?.sticks.owned).toEqual(two.owned);
    editShop(shop, (all) => ({ ...all, panel: "work" }));
    expect(storage.getItem("rimwright-shop")).toContain("Beech");
  });
});

describe("in a file", () => {
  test("they leave with the shelf and come to another shop, once, in one step of undo", async () => {
    const { shelf } = await openShelf();
    const files = await shelfFiles(shelf, two.owned);
    expect(files[0]?.sticks).toEqual(two.owned);
    const { session, shop } = openTab(shelf);
    const plan = await importPlanOf(shelf, file(files[0]));
    expect((await runImport(session, plan)).sticks).toBe(2);
    expect(shop.getState()?.sticks.owned).toEqual(two.owned);
    expect((await runImport(session, plan)).sticks).toBe(0);
    const after = shop.getState()?.sticks ?? none;
    expect(after.owned).toEqual(two.owned);
    expect(undoSticks(after).owned).toEqual([]);
  });

  test("one that differs under an id that is taken comes beside it", () => {
    const [first] = two.owned as [OwnedStick];
    const after = importSticks(two, [{ ...first, thickness: 8 }]);
    expect(plain(after)).toEqual([...plain(two), { ...ash, thickness: 8 }]);
    expect(new Set(after.owned.map(({ id }) => id)).size).toBe(3);
  });

  test("a shop that has none leaves them out", () => {
    expect(shelfFileOf([])).not.toHaveProperty("sticks");
  });

  test("what is no stick is named and left out alone", async () => {
    const { shelf } = await openShelf();
    const good = { ...ash, id: "a" };
    const json = {
      format: "rimwright-shelf",
      version: 1,
      instruments: [],
      sticks: [good, 5, { ...good, width: -3 }],
    };
    const plan = await importPlanOf(shelf, file(json));
    expect(plan.sticks).toEqual([good]);
    expect(plan.bad.map(({ path }) => path)).toEqual(["sticks[1]", "sticks[2]"]);
    expect(readSticks("none").leftOut).toHaveLength(1);
    expect(readSticks(Array.from({ length: mostSticks + 1 }, () => good)).leftOut).toHaveLength(1);
  });
});
