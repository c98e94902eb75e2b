import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import type { Frame, Point } from "../../drawing/frame.ts";
import type { Section } from "../../drawing/section/section.ts";
import type { Units } from "../../instrument/length.ts";
import { anglePart, type TargetKind, targetFields } from "../../instrument/outcome-fields.ts";
import { targetIn } from "../../profile/outcome.ts";
import { stepField } from "../../store/document/edits.ts";
import { dragBreak, dragTarget, stepTarget } from "../../store/document/hand-edits.ts";
import type { ShownPlan } from "../../store/document/plan.ts";
import type { State } from "../../store/document/state.ts";
import { dimension, height } from "../figures/measures.ts";
import { useEdit, useRimwright } from "../store-context.ts";

/** Something on the section that can be moved by hand or by key. */
export interface Handle {
  readonly id: "break" | "part" | "saddle";
  readonly name: string;
  readonly at: Point;
  readonly direction: "along" | "up";
  readonly value: number;
  readonly range: readonly [number, number];
  readonly said: string;
  /** What moving it does to the target, where it does anything. */
  readonly targetNotice: string | null;
  /** `from` and `to` in mm on the section: where it was taken hold of, and where it is now. */
  readonly drag: (state: State, from: Place, to: Place, gesture: string) => State;
  readonly step: (state: State, steps: number) => State;
}

export interface Place {
  readonly x: number;
  readonly z: number;
}

/** Each moves by as much as the hand does, so that it need not be hit in the middle. */
function handlesOf(section: Section, plan: ShownPlan, units: Units): readonly Handle[] {
  const { handles } = section;
  return [
    handles.break === null ? null : breakHandle(handles.break, plan, units),
    handles.part === null ? null : partHandle(handles.part, plan, units),
    handles.saddle === null ? null : saddleHandle(handles.saddle, plan, units),
  ].filter((handle) => handle !== null);
}

function breakHandle(at: Point, { instrument, profile }: ShownPlan, units: Units): Handle | null {
  const { breakX } = profile;
  if (breakX === null) return null;
  return {
    id: "break",
    name: "Break",
    at,
    direction: "along",
    value: breakX,
    range: [0, instrument.body.length],
    said: `${dimension(instrument.dome.flatLength, units)} from the neck end`,
    targetNotice: null,
    drag: (state, from, to, gesture) => dragBreak(state, breakX + to.x - from.x, gesture),
    step: (state, steps) => stepField(state, "dome.flatLength", -steps),
  };
}

function partHandle(at: Point, { instrument, profile }: ShownPlan, units: Units): Handle | null {
  const kind = anglePart[instrument.dome.method];
  const value = targetIn(profile, kind);
  const range = profile.reachable[kind];
  if (value === null || range === null) return null;
  return {
    id: "part",
    name: targetFields[kind].label,
    at,
    direction: "up",
    value,
    range,
    said: height(value, units),
    targetNotice: noticeOfTarget(instrument.target.kind, kind),
    drag: (state, from, to, gesture) => dragTarget(state, kind, value - (to.z - from.z), gesture),
    step: (state, steps) => stepTarget(state, kind, steps),
  };
}

function saddleHandle(at: Point, { instrument, profile }: ShownPlan, units: Units): Handle {
  const { saddleExposure } = profile;
  return {
    id: "saddle",
    name: "Saddle exposed",
    at,
    direction: "up",
    value: saddleExposure,
    range: profile.reachable.saddleExposure,
    said: height(saddleExposure, units),
    targetNotice: noticeOfTarget(instrument.target.kind, "saddleExposure"),
    drag: (state, from, to, gesture) =>
      dragTarget(state, "saddleExposure", saddleExposure + to.z - from.z, gesture),
    step: (state, steps) => stepTarget(state, "saddleExposure", steps),
  };
}

function noticeOfTarget(before: TargetKind, now: TargetKind): string | null {
  if (before === now) return null;
  const [old, taken] = [targetFields[before].label, targetFields[now].label];
  return `The target is now “${taken}”, in place of “${old}”.`;
}

interface Props {
  readonly section: Section;
  readonly plan: ShownPlan;
  /** The frame to keep while something is held, null when it is let go. */
  readonly onHold: (frame: Frame | null) => void;
}

interface Held {
  readonly handle: Handle;
  readonly section: Section;
  readonly from: Place;
  readonly gesture: string;
}

const keys: Readonly<Record<string, 1 | -1>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
};

let drags = 0;

/** The break, the shim (or spacer) and the saddle, to be dragged or moved by the arrow keys. */
export function Handles({ section, plan, onHold }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const drawing = useRef<SVGSVGElement>(null);
  const held = useRef<Held | null>(null);
  const [notice, setNotice] = useState("");
  const tell = ({ targetNotice }: Handle): void => {
    if (targetNotice !== null) setNotice(targetNotice);
  };

  const placeOf = ({ clientX, clientY }: PointerEvent, { toX, toZ }: Section): Place => {
    const box = drawing.current?.getBoundingClientRect();
    return { x: toX(clientX - (box?.left ?? 0)), z: toZ(clientY - (box?.top ?? 0)) };
  };
  const startDrag = (event: PointerEvent<SVGGElement>, handle: Handle): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drags += 1;
    const gesture = `drag ${handle.id} ${drags}`;
    held.current = { handle, section, from: placeOf(event, section), gesture };
    onHold(section.frame);
  };
  const move = (event: PointerEvent): void => {
    const { current } = held;
    if (current === null) return;
    const to = placeOf(event, current.section);
    edit((state) => current.handle.drag(state, current.from, to, current.gesture));
    tell(current.handle);
  };
  const endDrag = (): void => {
    held.current = null;
    onHold(null);
  };
  const onKeyDown = (event: KeyboardEvent, handle: Handle): void => {
    const sign = keys[event.key];
    if (sign === undefined) return;
    event.preventDefault();
    edit((state) => handle.step(state, event.shiftKey ? 10 * sign : sign));
    tell(handle);
  };

  const { width, height } = section.scene;
  return (
    <>
      <svg ref={drawing} className="handles" width={width} height={height}>
        <title>Handles on the section</title>
        {handlesOf(section, plan, units).map((handle) => (
          <g
            key={handle.id}
            className="handle"
            role="slider"
            tabIndex={0}
            aria-label={handle.name}
            aria-orientation={handle.direction === "along" ? "horizontal" : "vertical"}
            aria-valuemin={handle.range[0]}
            aria-valuemax={handle.range[1]}
            aria-valuenow={handle.value}
            aria-valuetext={handle.said}
            onPointerDown={(event) => startDrag(event, handle)}
            onPointerMove={move}
            onPointerUp={endDrag}
            onPointerCancel={endDrag}
            onKeyDown={(event) => onKeyDown(event, handle)}
          >
            <circle className="handle-reach" cx={handle.at[0]} cy={handle.at[1]} r={22} />
            <path className="handle-mark" d={markAt(handle)} />
          </g>
        ))}
      </svg>
      <p className="notice" role="status">
        {notice}
      </p>
    </>
  );
}

/** A ring with an arrowhead each way it can go. */
function markAt({ at: [x, y], direction }: Handle): string {
  const ring = `M${x - 6} ${y} a6 6 0 1 0 12 0 a6 6 0 1 0 -12 0 Z`;
  const heads =
    direction === "along"
      ? `M${x - 9} ${y - 5} L${x - 15} ${y} L${x - 9} ${y + 5} Z M${x + 9} ${y - 5} L${x + 15} ${y} L${x + 9} ${y + 5} Z`
      : `M${x - 5} ${y - 9} L${x} ${y - 15} L${x + 5} ${y - 9} Z M${x - 5} ${y + 9} L${x} ${y + 15} L${x + 5} ${y + 9} Z`;
  return `${ring} ${heads}`;
}
