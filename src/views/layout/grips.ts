import type { Point } from "../../drawing/frame.ts";
import type { Section } from "../../drawing/section.ts";
import type { Units } from "../../instrument/length.ts";
import { targetFields } from "../../instrument/outcome-fields.ts";
import { dragBreak, dragTarget, stepField, stepTarget } from "../../store/edits.ts";
import type { ShownPlan } from "../../store/plan.ts";
import type { State } from "../../store/state.ts";
import { dimension, height } from "../measures.ts";

/** Something on the section that can be moved by hand or by key. */
export interface Grip {
  readonly id: "break" | "shim" | "saddle";
  readonly name: string;
  readonly at: Point;
  readonly way: "along" | "up";
  readonly value: number;
  readonly range: readonly [number, number];
  readonly said: string;
  /** What moving it does to the target, where it does anything. */
  readonly takesOver: string | null;
  /** `from` and `to` in mm on the section: where it was taken hold of, and where it is now. */
  readonly drag: (state: State, from: Place, to: Place, gesture: string) => State;
  readonly step: (state: State, steps: number) => State;
}

export interface Place {
  readonly x: number;
  readonly z: number;
}

/** Each moves by as much as the hand does, so that it need not be hit in the middle. */
export function gripsOf(section: Section, plan: ShownPlan, units: Units): readonly Grip[] {
  const { handles } = section;
  const saddle = handles.saddle === null ? [] : [saddleGrip(handles.saddle, plan, units)];
  return [breakGrip(handles.break, plan, units), shimGrip(handles.shim, plan, units), ...saddle];
}

function breakGrip(at: Point, { instrument, profile }: ShownPlan, units: Units): Grip {
  const { breakX } = profile;
  return {
    id: "break",
    name: "Break",
    at,
    way: "along",
    value: breakX,
    range: [0, instrument.body.length],
    said: `${dimension(instrument.dome.flatLength, units)} from the neck end`,
    takesOver: null,
    drag: (state, from, to, gesture) => dragBreak(state, breakX + to.x - from.x, gesture),
    step: (state, steps) => stepField(state, "dome.flatLength", -steps),
  };
}

function shimGrip(at: Point, { instrument, profile }: ShownPlan, units: Units): Grip {
  const { shim } = profile;
  return {
    id: "shim",
    name: "Shim",
    at,
    way: "up",
    value: shim,
    range: profile.reachable.shim,
    said: height(shim, units),
    takesOver: takenOver(instrument.target.kind, "shim"),
    drag: (state, from, to, gesture) => dragTarget(state, "shim", shim - (to.z - from.z), gesture),
    step: (state, steps) => stepTarget(state, "shim", steps),
  };
}

function saddleGrip(at: Point, { instrument, profile }: ShownPlan, units: Units): Grip {
  const { saddleExposure } = profile;
  return {
    id: "saddle",
    name: "Saddle exposed",
    at,
    way: "up",
    value: saddleExposure,
    range: profile.reachable.saddleExposure,
    said: height(saddleExposure, units),
    takesOver: takenOver(instrument.target.kind, "saddleExposure"),
    drag: (state, from, to, gesture) =>
      dragTarget(state, "saddleExposure", saddleExposure + to.z - from.z, gesture),
    step: (state, steps) => stepTarget(state, "saddleExposure", steps),
  };
}

function takenOver(
  before: keyof typeof targetFields,
  now: "shim" | "saddleExposure",
): string | null {
  if (before === now) return null;
  const [old, taken] = [targetFields[before].label, targetFields[now].label];
  return `The target is now “${taken}”, in place of “${old}”.`;
}
