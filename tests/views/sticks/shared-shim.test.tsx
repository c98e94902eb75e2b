import { act, screen, waitFor, within } from "@testing-library/react";
import { afterEach, describe, expect, test, vi } from "vitest";
import { presets } from "../../../src/instrument/presets.ts";
import { setField } from "../../../src/store/document/edits.ts";
import { SharedShimPanel } from "../../../src/views/sticks/shared-shim-panel.tsx";
import { newUser, runJobsHere, showView } from "../show-view.tsx";

afterEach(() => {
  vi.restoreAllMocks();
});

const three = presets.slice(0, 3);

describe("one shim for the shop", () => {
  test("names who limits it, and what would change for the stick tried", async () => {
    const user = newUser();
    const asked = runJobsHere();
    showView(<SharedShimPanel instruments={three} shim={10} />);
    expect(await screen.findByRole("status")).toHaveTextContent(/shim/);
    const heading = await screen.findByRole("heading", { name: "With the stick tried, 10 mm" });
    const list = heading.nextElementSibling;
    if (!(list instanceof HTMLElement)) throw new Error("Nothing is said of it.");
    expect(within(list).getAllByRole("listitem")).toHaveLength(3);
    await user.click(screen.getByRole("button", { name: "one contact, the roomiest" }));
    await waitFor(() => expect(asked).toHaveLength(2));
    expect(await screen.findByText(/its edge [\d.]+ mm from the tail end/)).toBeInTheDocument();
  });

  test("asks for nothing anew while the instruments are the same", async () => {
    const asked = runJobsHere();
    const { store } = showView(<SharedShimPanel instruments={three} shim={8} />);
    await screen.findByRole("status");
    act(() => store.setState((state) => setField(state, "bridge.thickness", 8.2)));
    expect(asked).toHaveLength(1);
  });

  test("says that none is ticked, and that too many are", async () => {
    runJobsHere();
    showView(<SharedShimPanel instruments={[]} shim={8} />);
    expect(await screen.findByText("No instrument is ticked.")).toBeInTheDocument();
    const many = Array.from({ length: 41 }, (_, i) => ({ ...presets[0], id: String(i) }));
    showView(<SharedShimPanel instruments={many as typeof three} shim={8} />);
    expect(screen.getByText(/^41 are ticked. Tick 40 or fewer/)).toBeInTheDocument();
  });
});
