import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { stepNames, stepsOf } from "../../../src/instrument/as-built/steps.ts";
import { firstState } from "../../../src/store/document/state.ts";
import { undo } from "../../../src/store/document/undo.ts";
import { firstShop, type Shop } from "../../../src/store/shelf/shop.ts";
import { BenchView } from "../../../src/views/bench/bench-view.tsx";
import { outlookFrom } from "../../support/bench-record.ts";
import { entry, newUser, showView, typeOver } from "../show-view.tsx";

const at = (part: Partial<Shop>): { readonly shop: Shop } => ({ shop: { ...firstShop, ...part } });

const outlook = (): HTMLElement => screen.getByRole("region", { name: "Outlook" });

/** What stands beside one of the three heights at the saddle. */
const heightOf = (name: string): string =>
  within(outlook()).getByText(name, { selector: "dt" }).nextElementSibling?.textContent ?? "";

const tap = async (name: string | RegExp): Promise<void> =>
  newUser().click(screen.getByRole("button", { name }));

describe("a step of the work", () => {
  test("a measurement typed moves all three heights at the saddle, and undo takes it back", async () => {
    const { store } = showView(<BenchView />, at({ step: "gap" }));
    expect(outlook()).toHaveTextContent("Nothing is measured yet");
    const names = ["Saddle exposed", "String height", "Fret plane over the bridge"];
    const before = names.map(heightOf);
    for (const text of before)
      expect(text).toMatch(/^[\d.−]+ mm (within|close to|outside) its window/);
    await typeOver(newUser(), "Straightedge gap, top glued", "1.2");
    expect(store.getState().asBuilt.readings.gapAfter?.value).toBe(1.2);
    const after = names.map(heightOf);
    after.forEach((text, i) => {
      expect(text).not.toBe(before[i]);
    });
    expect(screen.getByText(/under the figure expected/)).toBeInTheDocument();
    store.setState(undo);
    expect(store.getState().asBuilt.readings.gapAfter).toBeUndefined();
  });

  test("what cannot be read stays as typed and is said", async () => {
    const { store } = showView(<BenchView />, at({ step: "gap" }));
    await typeOver(newUser(), "Straightedge gap, top glued", "thick");
    expect(entry("Straightedge gap, top glued")).toBeInvalid();
    expect(entry("Straightedge gap, top glued")).toHaveValue("thick");
    expect(store.getState().asBuilt.readings).toEqual({});
  });

  test("of the saddle draws it across the strings, as high as what is measured so far makes it", async () => {
    const { store } = showView(<BenchView />, at({ step: "saddle" }));
    const drawn = (): number[] => {
      const saddle = screen.getByRole("img", { name: /^The saddle seen from the tail/ });
      const said = saddle.getAttribute("aria-label") ?? "";
      return [...said.matchAll(/string \d (\d\.\d\d) mm/g)].map(([, mm]) => Number(mm));
    };
    const planned = drawn();
    expect(planned).toHaveLength(6);
    const reading = (value: number) => ({ value, date: "2026-05-14", note: "" });
    const { heights } = outlookFrom(store.getState().instrument, store.getState().asBuilt);
    act(() =>
      store.setState((state) => ({
        ...state,
        asBuilt: {
          ...state.asBuilt,
          readings: { bridgeClearance: reading(heights.bridgeClearance + 0.2) },
        },
      })),
    );
    const made = drawn();
    for (const [i, mm] of made.entries()) expect(mm - (planned[i] ?? 0)).toBeCloseTo(0.2, 1);
  });

  test("is ticked, which opens the next, and reopened", async () => {
    const { store, shop } = showView(<BenchView />, at({ step: "bridge" }));
    await tap("Done");
    expect(store.getState().asBuilt.done.bridge).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(shop.getState()?.step).toBe("saddle");
    await tap("Back");
    await tap("Reopen this step");
    expect(store.getState().asBuilt.done.bridge).toBeUndefined();
  });

  test("on paper it is the whole list, with lines for what is not measured", async () => {
    showView(<BenchView />, at({ step: "gap" }));
    expect(screen.queryByRole("region", { name: "The whole list" })).toBeNull();
    await typeOver(newUser(), "Straightedge gap, top glued", "1.2");
    fireEvent(window, new Event("beforeprint"));
    const list = screen.getByRole("region", { name: "The whole list" });
    for (const name of stepsOf("break").map((id) => stepNames[id]))
      expect(
        within(list).getByRole("heading", { name: new RegExp(`^${name}`) }),
      ).toBeInTheDocument();
    const row = (name: RegExp): HTMLElement => within(list).getByRole("row", { name });
    expect(row(/^Straightedge gap, top glued/)).toHaveTextContent("1.20 mm");
    expect(
      within(row(/^Relief [\d.]/))
        .getAllByRole("cell")
        .at(-2),
    ).toBeEmptyDOMElement();
    fireEvent(window, new Event("afterprint"));
    expect(screen.queryByRole("region", { name: "The whole list" })).toBeNull();
  });

  test("the shim's step says how its contact is kept", () => {
    showView(<BenchView />, at({ step: "shim" }));
    expect(screen.getByText(/strokes from side to side, or tape the shim/)).toBeInTheDocument();
  });

  test("the overrun is told, and no number asked for that nothing follows from", () => {
    showView(<BenchView />, at({ step: "overrun" }));
    const measure = screen.getByRole("region", { name: "Measure" });
    expect(within(measure).queryByRole("textbox")).toBeNull();
    expect(screen.getByText(/A flat sanded past the mark is another thing/)).toBeInTheDocument();
    expect(screen.getByRole("main")).not.toHaveTextContent("0 mm deep");
  });

  test("finished, the instrument is learnt from until it is opened again", async () => {
    const { store } = showView(<BenchView />, at({ step: "strings" }));
    await tap("Finish this instrument");
    expect(store.getState().asBuilt.finished).toMatch(/^\d{4}-\d\d-\d\d$/);
    await tap("Open it again");
    expect(store.getState().asBuilt.finished).toBeNull();
  });
});

describe("corrections", () => {
  const low = (gap: number) => ({
    ...at({ panel: "corrections" }),
    state: {
      ...firstState,
      asBuilt: {
        ...firstState.asBuilt,
        readings: { gapAfter: { value: gap, date: "2026-06-01", note: "" } },
      },
    },
  });

  test("one is applied, which brings the saddle to the plan, and taken back", async () => {
    const { store } = showView(<BenchView />, low(1.2));
    await tap("Apply: Bridge thickness");
    expect(store.getState().asBuilt.taken).toHaveLength(1);
    expect(screen.getByText(/nothing is left to correct/)).toBeInTheDocument();
    await tap("Undo the last correction");
    expect(store.getState().asBuilt.taken).toEqual([]);
  });

  test("the possible stand before the impossible", () => {
    showView(<BenchView />, low(1.2));
    const cards = screen
      .getAllByRole("heading", { level: 4 })
      .map((heading) => heading.closest("li")?.textContent?.includes("Not possible") ?? false);
    expect(cards.filter((barred) => barred).length).toBeGreaterThan(1);
    expect(cards.filter((barred) => !barred).length).toBeGreaterThan(1);
    expect(cards).toEqual([...cards].sort());
  });

  test("it goes as far as is asked: to the plan, just into the window, or not at all", async () => {
    showView(<BenchView />, low(0.2));
    const plan = screen.getByText(/too low, outside its window/).textContent;
    await tap("just into the window");
    expect(screen.getByText(/too low to be just inside its window/).textContent).not.toBe(plan);
    await tap("Apply: Bridge thickness");
    expect(heightOf("Saddle exposed")).toMatch(/close to its window/);
    expect(screen.getByText(/nothing need be corrected/)).toBeInTheDocument();
    await tap("accept it as it is");
    expect(screen.queryByRole("button", { name: /^Apply/ })).toBeNull();
  });

  test("a difference too small to measure is none", () => {
    const planned = showView(<BenchView />, at({ panel: "corrections" })).store;
    expect(planned.getState().asBuilt.readings).toEqual({});
    expect(screen.getByText(/as near as it can be measured/)).toBeInTheDocument();
    expect(screen.queryByRole("button", { name: /^Apply/ })).toBeNull();
  });
});

describe("learning", () => {
  test("the invented shelf says so and is removed", async () => {
    const { shop } = showView(<BenchView />, at({ panel: "learning" }));
    expect(screen.getByRole("note")).toHaveTextContent(/Invented\./);
    await tap("Remove the invented shelf");
    expect(shop.getState()?.demo).toBe(false);
    expect(screen.getAllByText(/0 instruments/).length).toBeGreaterThan(0);
  });
});

describe("the strings' pull", () => {
  test("is known once a string's weight is, and what cannot be is said", async () => {
    const { store } = showView(<BenchView />, at({ panel: "pull" }));
    expect(screen.getAllByText("not known").length).toBeGreaterThan(0);
    await typeOver(newUser(), "String 6: diameter", "0.3");
    expect(store.getState().asBuilt.strings[5]?.diameter).toBe(0.3);
    expect(screen.getAllByText(/^[\d.]+ N, [\d.]+ lb$/).length).toBeGreaterThan(0);
    await typeOver(newUser(), "String 5: unit weight", "7");
    expect(entry("String 5: unit weight")).toBeInvalid();
    expect(store.getState().asBuilt.strings[4]?.unitWeight ?? null).toBeNull();
  });
});
