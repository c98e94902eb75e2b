import { act, fireEvent, screen, waitFor } from "@testing-library/react";
import { describe, expect, test, vi } from "vitest";
import { field, openPage, type } from "../page.tsx";

describe("a field", () => {
  test("is named, and described by how it is measured and by what is wrong with it", async () => {
    openPage(["bench"]);
    expect(field("Stick's width under the rim")).toHaveAccessibleDescription(
      /^From the tail end in to the inner edge of the shim stick, where the rim rests on it\.\s*$/,
    );
    type("Stick's width under the rim", "x");
    await waitFor(() =>
      expect(field("Stick's width under the rim")).toHaveAccessibleDescription(
        /rests on it\.\s+“x” is not a number/,
      ),
    );
  });

  test("steps with the arrow keys, ten at a time with shift", () => {
    openPage();
    const input = field("Body length");
    fireEvent.keyDown(input, { key: "ArrowUp" });
    expect(input).toHaveValue("493");
    fireEvent.keyDown(input, { key: "ArrowDown", shiftKey: true });
    expect(input).toHaveValue("483");
  });

  test("says how to measure it once it has the cursor", async () => {
    openPage(["neck"]);
    fireEvent.focus(field("Relief"));
    expect(document.querySelector(".how")).toHaveTextContent(/^Relief\. Straightedge from fret 1/);
    await waitFor(() => expect(document.querySelector(".how svg path")).not.toBeNull());
  });
});

describe("the square fret of a fan", () => {
  const shown = () => screen.queryByLabelText("Square fret of a fan");

  test("is asked for as soon as there is a fan, and no longer once there is none", () => {
    openPage(["neck"]);
    expect(shown()).toBeNull();
    type("Fan of the frets", "12");
    expect(shown()).toHaveValue("7");
    type("Fan of the frets", "0");
    expect(shown()).toBeNull();
  });

  test("stays in sight without a fan while its text is to be put right", () => {
    openPage(["neck"]);
    type("Fan of the frets", "-12");
    type("Square fret of a fan", "seven");
    type("Fan of the frets", "0");
    expect(shown()).toHaveValue("seven");
    type("Square fret of a fan", "9");
    expect(shown()).toBeNull();
  });
});

describe("a stepper", () => {
  test("steps at the press and goes on while it is held", () => {
    vi.useFakeTimers();
    openPage();
    const more = screen.getByLabelText("More: Body length");
    fireEvent.pointerDown(more, { button: 0 });
    expect(field("Body length")).toHaveValue("493");
    act(() => vi.advanceTimersByTime(399));
    expect(field("Body length")).toHaveValue("493");
    act(() => vi.advanceTimersByTime(200));
    expect(Number(field("Body length").value)).toBeGreaterThan(494);
    fireEvent.pointerUp(more);
    const held = field("Body length").value;
    act(() => vi.advanceTimersByTime(2000));
    expect(field("Body length")).toHaveValue(held);
    vi.useRealTimers();
  });

  test("steps once for a screen reader's click, and not twice for a mouse's", () => {
    openPage();
    const less = screen.getByLabelText("Less: Body length");
    fireEvent.click(less, { detail: 0 });
    expect(field("Body length")).toHaveValue("491");
    fireEvent.pointerDown(less, { button: 0 });
    fireEvent.pointerUp(less);
    fireEvent.click(less, { detail: 1 });
    expect(field("Body length")).toHaveValue("490");
  });
});

describe("a field that may be none", () => {
  test("says so in words, stops its steppers, and gives the number back", () => {
    openPage();
    const none = screen.getByLabelText("Dish radius: none");
    fireEvent.click(none);
    expect(field("Dish radius")).toHaveValue("none");
    expect(screen.getByLabelText("More: Dish radius")).toBeDisabled();
    fireEvent.click(none);
    expect(field("Dish radius")).toHaveValue("8534.4");
  });

  test("takes the word typed", () => {
    openPage();
    type("Back radius", "Flat");
    expect(screen.getByLabelText("Back radius: flat")).toBeChecked();
  });
});

describe("units", () => {
  test("change every figure shown and keep what was typed with its own unit", () => {
    openPage();
    type("Body length", "19 1/2 in");
    fireEvent.click(screen.getByLabelText("Inches in fractions, to 1/64"));
    expect(field("Body length")).toHaveValue("19 1/2 in");
    expect(field("Lower bout width")).toHaveValue("15 5/32");
    expect(field("Dish radius")).toHaveValue("28");
  });
});
