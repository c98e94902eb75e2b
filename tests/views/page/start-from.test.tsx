import { fireEvent, screen } from "@testing-library/react";
import { expect, test } from "vitest";
import { field, openPage, type } from "../page.tsx";

test("an invented instrument can be started from, and what was open is put back with all that was typed", async () => {
  openPage();
  fireEvent.change(screen.getByLabelText("Name of the instrument"), {
    target: { value: "Mine" },
  });
  type("Body length", "wide");
  fireEvent.click(screen.getByText("Start from…"));
  fireEvent.click(await screen.findByText("Jumbo size"));
  expect(field("Body length")).toHaveValue("530");
  expect(screen.getAllByText(/^Invented for Rimwright/).length).toBeGreaterThan(0);
  fireEvent.click(screen.getByText("Start from…"));
  fireEvent.click(screen.getByText("Back to “Mine”"));
  expect(field("Body length")).toHaveValue("wide");
});
