import { screen } from "@testing-library/react";
import { describe, expect, test } from "vitest";
import { stepsOf } from "../../../src/instrument/as-built/steps.ts";
import { defaultInstrument } from "../../../src/instrument/default-instrument.ts";
import { StepPicture } from "../../../src/views/bench/step-picture.tsx";
import { onSeat, solved, solvedSeat, withShim } from "../../support/solved.ts";
import { showView } from "../show-view.tsx";

const seated = onSeat({ ...defaultInstrument, target: { kind: "stringHeight", value: 12.5 } });

describe("a step's picture", () => {
  test.each([
    ["break", defaultInstrument, solved(defaultInstrument)],
    ["seat", seated, solvedSeat(seated)],
  ] as const)("is there at every step with a %s", (method, instrument, profile) => {
    showView(
      stepsOf(method).map((step) => (
        <StepPicture key={step} step={step} instrument={instrument} profile={profile} />
      )),
    );
    const drawn = screen.getAllByRole("img");
    expect(drawn).toHaveLength(stepsOf(method).length);
    for (const picture of drawn) expect(picture).toHaveAccessibleName(/\d/);
  });

  test("is of the plan it is given", () => {
    const corrected = withShim(defaultInstrument, 9.25);
    showView(<StepPicture step="flat" instrument={corrected} profile={solved(corrected)} />);
    expect(screen.getByRole("img")).toHaveAccessibleName(/^shim 9\.25 mm/);
  });
});
