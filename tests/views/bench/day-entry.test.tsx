import { fireEvent, render, screen } from "@testing-library/react";
import { useState } from "react";
import { expect, test } from "vitest";
import { DayEntry } from "../../../src/views/bench/day-entry.tsx";

const kept: string[] = [];

function Dated() {
  const [day, setDay] = useState("2026-05-14");
  const onDay = (next: string): void => {
    kept.push(next);
    setDay(next);
  };
  return <DayEntry shown="Measured on" label="Gap: measured on" day={day} onDay={onDay} />;
}

/** What a browser's date field says while a year is typed digit by digit. */
const years = ["0002", "0020", "0202", "2026"];

test("a year typed digit by digit is kept once it is whole", () => {
  render(<Dated />);
  const field = screen.getByLabelText<HTMLInputElement>("Gap: measured on");
  kept.splice(0);
  fireEvent.focus(field);
  for (const year of years) fireEvent.change(field, { target: { value: `${year}-03-05` } });
  fireEvent.blur(field);
  expect(kept).toEqual(["2026-03-05"]);
  expect(field.value).toBe("2026-03-05");
  expect(screen.getByRole("status", { hidden: false }).textContent).toBe("");
});

test("a day left half typed is not kept, and the field says so", () => {
  render(<Dated />);
  const field = screen.getByLabelText<HTMLInputElement>("Gap: measured on");
  kept.splice(0);
  fireEvent.focus(field);
  fireEvent.change(field, { target: { value: "0026-05-31" } });
  fireEvent.blur(field);
  expect(kept).toEqual([]);
  expect(field.getAttribute("aria-invalid")).toBe("true");
  expect(screen.getByRole("status", { hidden: false }).textContent).toMatch(
    /whole day, from 1900 to 2200/,
  );
});
