import { act, fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, test, vi } from "vitest";
import {
  everyGroup,
  field,
  groupHeading,
  openPage,
  shimShown,
  troubleOf,
  type,
  verdict,
} from "../page.tsx";

describe("a first visit", () => {
  test("shows a worked instrument that says it is invented, its section and its shim in both units", () => {
    openPage();
    expect(screen.getAllByText(/^Invented for Rimwright/)[0]).toBeInTheDocument();
    expect(screen.getByRole("img", { name: /section/i })).toBeInTheDocument();
    expect(shimShown()).toMatch(/\d\.\d\s?mm/);
    expect(shimShown()).toMatch(/\d+\/\d+\s?in/);
  });

  test("folds what is rarely used, and shows no field of it", () => {
    openPage();
    const heading = groupHeading("Windows");
    expect(heading).toHaveAttribute("aria-expanded", "false");
    expect(screen.queryByLabelText("Pitch, least")).toBeNull();
    fireEvent.click(heading);
    expect(field("Pitch, least")).toBeInTheDocument();
  });
});

describe("the verdict", () => {
  test("follows the chain from pitch to break angle, each against its window by word and shape", () => {
    openPage();
    const links = within(verdict()).getAllByRole("listitem");
    expect(links.map((link) => within(link).getByRole("heading").textContent)).toEqual([
      "Pitch",
      "Straightedge gap",
      "Fret plane over the bridge",
      "String height",
      "Saddle exposed",
      "Break angle",
    ]);
    for (const link of links.filter((_, i) => i !== 1)) {
      expect(link.querySelector(".standing")).toHaveTextContent(
        /^(within|close to the edge.*|outside)$/,
      );
      expect(link.querySelector(".mark-shape path")).not.toBeNull();
    }
  });

  test("an outcome outside its window says so, and a check says what to do about it", async () => {
    openPage();
    type("Saddle exposed", "1");
    const links = within(verdict()).getAllByRole("listitem");
    expect(links[4]).toHaveTextContent("out");
    const checks = screen.getByRole("region", { name: "Checks" });
    await waitFor(() => expect(within(checks).getAllByRole("listitem").length).toBeGreaterThan(0));
    expect(within(checks).getAllByText(/^Go to /)[0]).toBeEnabled();
  });

  test("is read out once the numbers rest, and not before", () => {
    vi.useFakeTimers();
    openPage();
    const spoken = verdict().querySelector("[aria-live=polite]");
    expect(spoken).toBeEmptyDOMElement();
    act(() => vi.advanceTimersByTime(1000));
    expect(spoken).toHaveTextContent(/^Shim \d/);
    vi.useRealTimers();
  });
});

describe("typing", () => {
  test("changes the shim with every stroke that can be read", () => {
    openPage();
    const before = shimShown();
    type("Dish radius", "20 ft");
    expect(shimShown()).not.toBe(before);
    type("Dish radius", "28'");
    expect(shimShown()).toBe(before);
  });

  test.each(["banana", "", "1/0", "--", "1e999", "<script>", "\u202e12", "😀"])(
    "%j in any field keeps the drawing and the shim, marks the field and says why beside it",
    async (text) => {
      openPage(everyGroup);
      const before = shimShown();
      for (const input of screen.getAllByRole<HTMLInputElement>("textbox")) {
        if (!input.id.startsWith("field-")) continue;
        const good = input.value;
        fireEvent.change(input, { target: { value: text } });
        expect(input).toHaveValue(text);
        expect(input).toBeInvalid();
        const told = document.getElementById(`${input.id}-trouble`);
        await waitFor(() => expect(told).toHaveTextContent(/\w{3}/));
        fireEvent.change(input, { target: { value: good } });
        expect(input).toBeValid();
      }
      expect(screen.getByRole("img", { name: /section/i })).toBeInTheDocument();
      expect(shimShown()).toBe(before);
    },
  );

  test("what cannot be read says what would work in this instrument", async () => {
    openPage();
    type("Body length", "wide");
    await waitFor(() => expect(troubleOf("Body length")).toMatch(/[\d.]+ mm to [\d.]+ mm works/));
    expect(screen.getByText("Not all you typed is in this plan.")).toBeInTheDocument();
  });

  test("what has no plan keeps the last one, says so, and offers the nearest that works", () => {
    openPage();
    const before = shimShown();
    type("Break from the neck end", "300");
    expect(shimShown()).toBe(before);
    expect(verdict()).toHaveAttribute("data-current", "false");
    expect(screen.getByText("This is the last plan that worked.")).toBeInTheDocument();
    fireEvent.click(screen.getAllByText(/^Use 284/)[0] ?? document.body);
    expect(screen.queryByText("This is the last plan that worked.")).toBeNull();
    expect(verdict()).toHaveAttribute("data-current", "true");
    expect(field("Break from the neck end")).toBeValid();
  });

  test("a field that brought about a refusal elsewhere tells of it too", () => {
    openPage();
    type("Break from the neck end", "480");
    expect(troubleOf("Break from the neck end")).toMatch(/\w/);
  });
});

describe("the target", () => {
  test("switching it moves nothing until its value is changed", () => {
    openPage();
    const before = shimShown().replace(/(for|as).*/, "");
    for (const name of [/^Pitch$/, /^Fret plane/, /^String height/, /^Shim itself/, /^Saddle/]) {
      fireEvent.click(screen.getByLabelText(name, { selector: "[type=radio]" }));
      expect(shimShown()).toContain(before);
    }
    type("Saddle exposed", "4.5");
    expect(shimShown()).not.toContain(before);
  });

  test("says when to choose it, and what of its range keeps everything within its window", async () => {
    openPage();
    expect(screen.getByText(/^When you want so much saddle/)).toBeInTheDocument();
    expect(await screen.findByText(/keeps everything within its window/)).toHaveTextContent(
      /^[\d.]+ mm to [\d.]+ mm keeps/,
    );
    fireEvent.click(screen.getByLabelText("Pitch", { selector: "[type=radio]" }));
    expect(screen.getByText(/^When the angle is given/)).toBeInTheDocument();
  });
});

describe("the shim stick's width", () => {
  test("says what it is worth at the bridge", async () => {
    openPage();
    const worth = async (): Promise<number> => {
      const said = await screen.findByText(/^Worth [\d.]+ mm at the bridge\.$/);
      return Number.parseFloat(said.textContent?.slice(6) ?? "");
    };
    expect(await worth()).toBeCloseTo(0.48, 1);
    type("Stick's width under the rim", "10");
    await waitFor(async () => expect(await worth()).toBeLessThan(0.3));
  });
});

describe("the braces", () => {
  test("say whether they go with the dish, also where the dish is stated, and the way back", () => {
    const store = openPage();
    expect(screen.getByText("Same as the dish, and changes with it.")).toBeInTheDocument();
    type("Brace radius", "25 ft");
    expect(screen.getByText(/^Braces are set apart: 7620 mm/)).toBeInTheDocument();
    fireEvent.click(screen.getByText("Same as the dish"));
    expect(store.getState().instrument.dome.braceRadius).toBe(8534.4);
    expect(screen.queryByText(/^Braces are set apart/)).toBeNull();
  });
});

describe("going to a field", () => {
  test("unfolds its group and puts the cursor in it", async () => {
    openPage([]);
    fireEvent.click(screen.getByText(/^for saddle exposed/));
    await waitFor(() => expect(field("Saddle exposed")).toHaveFocus());
  });

  test("a folded group with something wrong in it says so", () => {
    const store = openPage(["neck"]);
    type("Scale length", "long");
    act(() =>
      store.setState((state) => ({ ...state, choices: { ...state.choices, folded: everyGroup } })),
    );
    expect(groupHeading("Neck")).toHaveTextContent("to fix");
    expect(groupHeading("Outline and sides")).not.toHaveTextContent("to fix");
  });
});

describe("the address", () => {
  test("that names no view opens the layout", () => {
    window.location.hash = "#/nowhere";
    openPage();
    expect(verdict()).toBeInTheDocument();
    window.location.hash = "";
  });
});
