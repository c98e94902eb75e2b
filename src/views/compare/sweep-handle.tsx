import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import { pxOn } from "../../drawing/charts/chart.ts";
import type { SweepChart } from "../../drawing/charts/sweep-chart.ts";
import { readField } from "../../instrument/field-value.ts";
import { fieldAt } from "../../instrument/fields.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import type { SweepAsked } from "../../profile/comparison/sweep.ts";
import { setField } from "../../store/document/edits.ts";
import { dragTarget } from "../../store/document/hand-edits.ts";
import { type State, undoStep } from "../../store/document/state.ts";
import { snapped, stepped } from "../../store/document/step.ts";
import { fieldMeasure } from "../figures/chart-measures.ts";
import type { Room } from "../figures/use-room.ts";
import { useEdit, useRimwright } from "../store-context.ts";

interface Props {
  readonly drawing: SweepChart;
  readonly asked: SweepAsked;
  readonly room: Room;
  /** The base as it is swept. */
  readonly held: Instrument;
}

/** The base's present value, to drag or to step: the base itself is changed. */
export function SweepHandle({ drawing, asked, room, held }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const edit = useEdit();
  const dragged = useRef<string | null>(null);
  const { path } = asked;
  const { kind } = held.target;
  const value = readField(held, path);
  if (value === null) return null;
  const field = fieldAt(path, kind);
  const { chart } = drawing;
  const x = pxOn(chart, value);
  const moved = (to: number, drag: string) => (state: State) =>
    path === "target.value"
      ? dragTarget(state, kind, to, drag)
      : setField(state, path, snapped(to, field, state.choices.units), undoStep("drag", drag));
  const startDrag = (event: PointerEvent<SVGGElement>): void => {
    event.currentTarget.setPointerCapture(event.pointerId);
    dragged.current = `sweep ${path} ${event.timeStamp}`;
  };
  const drag = (event: PointerEvent<SVGGElement>): void => {
    const name = dragged.current;
    const box = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    if (name === null || box === undefined) return;
    edit(moved(drawing.toInput(event.clientX - box.left), name));
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const sign = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (sign === undefined) return;
    event.preventDefault();
    const steps = event.shiftKey ? 10 * sign : sign;
    edit(moved(stepped(value, field, units, steps), `step sweep ${path}`));
  };
  return (
    <svg className="handles" width={room.width} height={room.height}>
      <title>The present value</title>
      <g
        className="handle"
        role="slider"
        tabIndex={0}
        aria-label={`${field.label}, present value`}
        aria-orientation="horizontal"
        aria-valuenow={value}
        aria-valuemin={asked.range[0]}
        aria-valuemax={asked.range[1]}
        aria-valuetext={fieldMeasure(path, kind, units).say(value)}
        onPointerDown={startDrag}
        onPointerMove={drag}
        onPointerUp={() => {
          dragged.current = null;
        }}
        onKeyDown={onKeyDown}
      >
        <rect
          className="handle-reach"
          x={x - 22}
          y={chart.top - 10}
          width={44}
          height={chart.bottom - chart.top + 32}
        />
        <circle className="handle-mark" cx={x} cy={chart.bottom} r={8} />
      </g>
    </svg>
  );
}
