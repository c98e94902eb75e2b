import { describe, expect, it } from "vitest";
import { finish, putMeasurement } from "../../../src/store/document/as-built-edits.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { makeStore } from "../../../src/store/document/store.ts";
import {
  editShop,
  firstShop,
  forget,
  learnFrom,
  makeShopStore,
} from "../../../src/store/shelf/shop.ts";
import { openShop, readShop } from "../../../src/store/shelf/shop-storage.ts";
import { memoryStorage } from "../../support/tab.ts";

const day = "2026-05-14";
const later = "2026-05-20";

/** The shop of a page, as another visit finds what that one stored. */
function visit(storage = memoryStorage()) {
  const [shop, page] = [makeShopStore(), makeStore()];
  openShop(shop, storage, page, new EventTarget());
  return { shop, page, storage };
}

describe("what is learnt from", () => {
  const measured = putMeasurement(firstState, "gapAfter", 1.6, "mm", day);
  const asFinished = (on: string) => {
    const { instrument, asBuilt } = finish(measured, on);
    return { instrument, asBuilt, invented: false };
  };

  it("is each instrument once, as it was finished last, until it is forgotten", () => {
    const twice = learnFrom(learnFrom(firstShop, asFinished(day)), asFinished(later));
    expect(twice.finished).toEqual([asFinished(later)]);
    expect(forget(twice, firstState.instrument.id)).toEqual(firstShop);
  });

  it("follows the open instrument: finished, it is learnt from; opened again, no more", () => {
    const { shop, page } = visit();
    page.setState((state) => finish(state, day));
    expect(shop.getState()?.finished).toHaveLength(1);
    page.setState((state) => ({ ...state, asBuilt: { ...state.asBuilt, finished: null } }));
    expect(shop.getState()?.finished).toEqual([]);
  });
});

describe("what is stored between visits", () => {
  it("is all of it, through the doors", () => {
    const { shop, page, storage } = visit();
    page.setState((state) => finish(state, later));
    editShop(shop, (all) => ({
      ...all,
      step: "gap",
      panel: "corrections",
      goal: "stringHeight",
      shares: { bridge: 0.5 },
      demo: false,
    }));
    expect(visit(storage).shop.getState()).toEqual(shop.getState());
    expect(shop.getState()?.finished).toHaveLength(1);
  });

  it("is the first shop where nothing can be read, and never throws", () => {
    for (const json of [null, 7, [], { finished: [{}], step: "x", shares: 1 }])
      expect(readShop(json)).toEqual(firstShop);
    const refusing = {
      getItem: () => "{",
      setItem: () => {
        throw new Error("full");
      },
    };
    const { shop } = visit(refusing);
    editShop(shop, (all) => ({ ...all, demo: false }));
    expect(shop.getState()?.demo).toBe(false);
  });

  it("is not changed before it has been read", () => {
    const shop = makeShopStore();
    editShop(shop, (all) => ({ ...all, demo: false }));
    expect(shop.getState()).toBeNull();
  });
});
