import { act, screen } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { setTarget, switchMethod } from "../../../src/store/document/edits.ts";
import { WhyView } from "../../../src/views/why/why-view.tsx";
import { aimed, solved } from "../../support/solved.ts";
import { showView } from "../show-view.tsx";

describe("why the shim decides", () => {
  test("is told in five pictures of the open instrument, a sentence each", () => {
    showView(<WhyView />);
    expect(screen.getByRole("heading", { level: 2 })).toHaveTextContent("Why the shim decides");
    expect(screen.getAllByRole("img")).toHaveLength(5);
    const { shim, saddleExposure } = solved(defaultInstrument);
    expect(screen.getByText(/^A fingerboard must/)).toHaveTextContent(
      `a shim of ${shim.toFixed(1)}`,
    );
    const thicker = solved(aimed(defaultInstrument, "shim", shim + 1));
    const raised = thicker.saddleExposure - saddleExposure;
    expect(screen.getByText(/A shim 1 mm thicker/)).toHaveTextContent(raised.toFixed(2));
  });

  test("follows what is changed, and the other way", () => {
    const { store } = showView(<WhyView />);
    act(() => store.setState(setTarget(store.getState(), "shim", 7.5)));
    expect(screen.getByText(/^A fingerboard must/)).toHaveTextContent("a shim of 7.5 mm");
    act(() => store.setState(switchMethod(store.getState(), "seat")));
    expect(screen.getByRole("heading", { level: 2 })).toHaveTextContent("Why the spacer decides");
    expect(screen.getByText(/on a spacer of/)).toBeVisible();
  });
});
