import { fireEvent, screen } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { undo } from "../../../src/store/document/undo.ts";
import { firstShop, makeShopStore } from "../../../src/store/shelf/shop.ts";
import { recordOf } from "../../support/bench-record.ts";
import { field, openPage } from "../page.tsx";

/** A shop that has finished instruments, each come down so far in its first week. */
function shopOf(falls: readonly number[]) {
  const shop = makeShopStore();
  const finished = falls.map((fall) => ({
    instrument: defaultInstrument,
    asBuilt: recordOf({ bridgeClearance: 0.6, weekRelief: 0, weekClearance: 0.6 - fall }),
    invented: false,
  }));
  shop.setState({ ...firstShop, finished }, true);
  return shop;
}

describe("beside the settling", () => {
  test("stands what the builder's own instruments did; taken by a tap, undone in one step", async () => {
    const store = openPage(["strings"], shopOf([0.3, 0.31, 0.32]));
    expect(
      await screen.findByText(/^Settling in a week under tension, the mean of 3: 0\.31 mm down/),
    ).toHaveTextContent("This plan counts on 0.00 mm.");
    expect(store.getState().instrument.strings.settling).toBe(0);
    fireEvent.click(screen.getByText("Count on 0.31 mm of settling"));
    expect(field("Settling under tension")).toHaveValue("0.31");
    expect(screen.getByText("Count on 0.31 mm of settling")).toBeDisabled();
    store.setState(undo);
    expect(store.getState().instrument.strings.settling).toBe(0);
  });

  test("stands nothing of two instruments, nor of the invented ones", async () => {
    openPage(["strings"], shopOf([0.3, 0.31]));
    await import("../../../src/views/fields/settling-offer.tsx");
    await Promise.resolve();
    expect(screen.queryByText(/of settling$/)).toBeNull();
  });
});
