import { fireEvent, screen, waitFor } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { field, openPage, type } from "../page.tsx";

const handleOf = (name: string): HTMLElement =>
  screen.getByLabelText(name, { selector: "[role=slider]" });

/** The page with its handles, which come after the first drawing. */
async function openHeld(): Promise<void> {
  openPage();
  await screen.findAllByRole("slider");
}

function drag(name: string, dx: number, dy: number): void {
  const handle = handleOf(name);
  fireEvent.pointerDown(handle, { button: 0, pointerId: 1, clientX: 100, clientY: 100 });
  fireEvent.pointerMove(handle, { pointerId: 1, clientX: 100 + dx, clientY: 100 + dy });
  fireEvent.pointerUp(handle, { pointerId: 1 });
}

describe("the handles on the section", () => {
  test("say what they hold and where it stands", async () => {
    await openHeld();
    expect(handleOf("Break")).toHaveAttribute("aria-valuetext", "100 mm from the neck end");
    expect(handleOf("Shim")).toHaveAttribute(
      "aria-valuetext",
      expect.stringMatching(/^\d\.\d\d mm$/),
    );
    expect(handleOf("Saddle exposed")).toHaveAttribute("aria-valuetext", "3.40 mm");
  });

  test("the break dragged tailward makes the flat longer", async () => {
    await openHeld();
    drag("Break", -40, 0);
    expect(Number(field("Break from the neck end").value)).toBeGreaterThan(110);
  });

  test("the break steps toward the neck with the right arrow, ten with shift", async () => {
    await openHeld();
    fireEvent.keyDown(handleOf("Break"), { key: "ArrowRight" });
    expect(field("Break from the neck end")).toHaveValue("99");
    fireEvent.keyDown(handleOf("Break"), { key: "ArrowLeft", shiftKey: true });
    expect(field("Break from the neck end")).toHaveValue("109");
  });

  test("the shim dragged becomes the target, and says in place of what", async () => {
    await openHeld();
    drag("Shim", 0, 15);
    expect(screen.getByLabelText(/^Shim itself/)).toBeChecked();
    expect(Number(field("Shim").value)).toBeGreaterThan(9);
    expect(
      screen.getByText("The target is now “Shim”, in place of “Saddle exposed”."),
    ).toBeInTheDocument();
  });

  test("turned over, the shim still grows away from the board", async () => {
    await openHeld();
    fireEvent.click(screen.getByText("Turn over"));
    const before = Number(handleOf("Shim").getAttribute("aria-valuenow"));
    drag("Shim", 0, -15);
    const after = (): number => Number(handleOf("Shim").getAttribute("aria-valuenow"));
    await waitFor(() => expect(after()).toBeGreaterThan(before));
    expect(screen.queryByLabelText("Saddle exposed", { selector: "[role=slider]" })).toBeNull();
  });

  test("the saddle dragged up asks for more of it", async () => {
    await openHeld();
    drag("Saddle exposed", 0, -12);
    expect(Number(field("Saddle exposed").value)).toBeGreaterThan(4);
  });

  test("dragged far out of reach, they stop at what works", async () => {
    await openHeld();
    drag("Break", -5000, 0);
    drag("Shim", 0, 5000);
    expect(screen.queryByText("This is the last plan that worked.")).toBeNull();
  });

  test("are put away while what is drawn is not what is typed", async () => {
    await openHeld();
    type("Break from the neck end", "300");
    await waitFor(() => expect(screen.queryByRole("slider")).toBeNull());
  });
});
