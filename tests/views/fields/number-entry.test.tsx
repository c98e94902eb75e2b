import { screen } from "@testing-library/react";
import { useState } from "react";
import { describe, expect, test, vi } from "vitest";
import { LengthEntry } from "../../../src/views/fields/length-entry.tsx";
import { newUser, showView } from "../show-view.tsx";

interface Props {
  readonly first: number | null;
  readonly heard: (mm: number | null) => void;
}

function Strip({ first, heard }: Props) {
  const [value, setValue] = useState(first);
  return (
    <>
      <LengthEntry
        label="Strip, width"
        value={value}
        least={10}
        most={500}
        none="not stated"
        onChange={(mm) => {
          heard(mm);
          setValue(mm);
        }}
      />
      <button type="button" onClick={() => setValue(80)}>
        Reset
      </button>
    </>
  );
}

const open = (first: number | null) => {
  const heard = vi.fn();
  showView(<Strip {...{ first, heard }} />);
  const input = screen.getByRole<HTMLInputElement>("textbox", { name: "Strip, width" });
  return { heard, input, user: newUser() };
};

describe("a number entry", () => {
  test("has its text selected by a tap, so that typing takes its place", async () => {
    const { heard, input, user } = open(6.79);
    await user.click(input);
    await user.keyboard("75,5");
    expect(input).toHaveValue("75,5");
    expect(heard).toHaveBeenLastCalledWith(75.5);
  });

  test("leaves a second tap to the cursor, to correct one figure", async () => {
    const { input, user } = open(79);
    await user.click(input);
    await user.pointer({ target: input, offset: 1, keys: "[MouseLeft]" });
    await user.keyboard("5");
    expect(input).toHaveValue("759");
  });

  test("has its text selected when tabbed into", async () => {
    const { input, user } = open(79);
    await user.tab();
    expect(input).toHaveFocus();
    expect([input.selectionStart, input.selectionEnd]).toEqual([0, 2]);
  });

  test("keeps what cannot be read, says why, and changes nothing", async () => {
    const { heard, input, user } = open(79);
    await user.clear(input);
    heard.mockClear();
    await user.type(input, "wide");
    expect(input).toHaveValue("wide");
    expect(input).toBeInvalid();
    expect(input).toHaveAccessibleDescription("“wide” is not a number.");
    expect(heard).not.toHaveBeenCalled();
  });

  test("says the limits of what it takes", async () => {
    const { heard, input, user } = open(79);
    await user.click(input);
    await user.keyboard("9");
    expect(input).toHaveAccessibleDescription("This must be from 10 mm to 500 mm.");
    expect(heard).not.toHaveBeenCalled();
  });

  test("keeps another unit as typed, until the value is set elsewhere", async () => {
    const { heard, input, user } = open(79);
    await user.click(input);
    await user.keyboard("5 in");
    expect(heard).toHaveBeenLastCalledWith(127);
    expect(input).toHaveValue("5 in");
    await user.click(screen.getByRole("button", { name: "Reset" }));
    expect(input).toHaveValue("80");
  });

  test("steps by button and by key, ten at a time with shift, within its limits", async () => {
    const { input, user } = open(79.4);
    await user.click(screen.getByRole("button", { name: "More: Strip, width" }));
    expect(input).toHaveValue("80");
    await user.type(input, "{ArrowDown}");
    expect(input).toHaveValue("79");
    await user.keyboard("{Shift>}{ArrowUp}{/Shift}");
    expect(input).toHaveValue("89");
    await user.clear(input);
    await user.type(input, "499");
    await user.keyboard("{Shift>}{ArrowUp}{/Shift}");
    expect(input).toHaveValue("500");
  });

  test("takes an empty text for nothing stated, and cannot be stepped then", async () => {
    const { heard, input, user } = open(79);
    await user.clear(input);
    expect(heard).toHaveBeenLastCalledWith(null);
    await user.tab();
    expect(screen.getByRole("button", { name: "More: Strip, width" })).toBeDisabled();
  });
});
