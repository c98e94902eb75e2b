import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import type { Frame } from "../../drawing/frame.ts";
import type { Section } from "../../drawing/section.ts";
import type { ShownPlan } from "../../store/plan.ts";
import { useAct, useRimwright } from "../store-context.ts";
import { type Grip, gripsOf, type Place } from "./grips.ts";

interface Props {
  readonly section: Section;
  readonly plan: ShownPlan;
  /** The frame to keep while something is held, null when it is let go. */
  readonly onHold: (frame: Frame | null) => void;
}

interface Held {
  readonly grip: Grip;
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

/** The break, the shim and the saddle, to be dragged or moved by the arrow keys. */
export function Handles({ section, plan, onHold }: Props) {
  const units = useRimwright((state) => state.choices.units);
  const act = useAct();
  const drawing = useRef<SVGSVGElement>(null);
  const held = useRef<Held | null>(null);
  const [notice, setNotice] = useState("");
  const tell = ({ takesOver }: Grip): void => {
    if (takesOver !== null) setNotice(takesOver);
  };

  const placeOf = ({ clientX, clientY }: PointerEvent, { toX, toZ }: Section): Place => {
    const box = drawing.current?.getBoundingClientRect();
    return { x: toX(clientX - (box?.left ?? 0)), z: toZ(clientY - (box?.top ?? 0)) };
  };
  const take = (event: PointerEvent<SVGGElement>, grip: Grip): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drags += 1;
    const gesture = `drag ${grip.id} ${drags}`;
    held.current = { grip, section, from: placeOf(event, section), gesture };
    onHold(section.frame);
  };
  const move = (event: PointerEvent): void => {
    const { current } = held;
    if (current === null) return;
    const to = placeOf(event, current.section);
    act((state) => current.grip.drag(state, current.from, to, current.gesture));
    tell(current.grip);
  };
  const letGo = (): void => {
    held.current = null;
    onHold(null);
  };
  const onKeyDown = (event: KeyboardEvent, grip: Grip): void => {
    const way = keys[event.key];
    if (way === undefined) return;
    event.preventDefault();
    act((state) => grip.step(state, event.shiftKey ? 10 * way : way));
    tell(grip);
  };

  const { width, height } = section.scene;
  return (
    <>
      <svg ref={drawing} className="handles" width={width} height={height}>
        <title>Handles on the section</title>
        {gripsOf(section, plan, units).map((grip) => (
          <g
            key={grip.id}
            className="handle"
            role="slider"
            tabIndex={0}
            aria-label={grip.name}
            aria-orientation={grip.way === "along" ? "horizontal" : "vertical"}
            aria-valuemin={grip.range[0]}
            aria-valuemax={grip.range[1]}
            aria-valuenow={grip.value}
            aria-valuetext={grip.said}
            onPointerDown={(event) => take(event, grip)}
            onPointerMove={move}
            onPointerUp={letGo}
            onPointerCancel={letGo}
            onKeyDown={(event) => onKeyDown(event, grip)}
          >
            <circle className="handle-reach" cx={grip.at[0]} cy={grip.at[1]} r={22} />
            <path className="handle-mark" d={markAt(grip)} />
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
function markAt({ at: [x, y], way }: Grip): string {
  const ring = `M${x - 6} ${y} a6 6 0 1 0 12 0 a6 6 0 1 0 -12 0 Z`;
  const heads =
    way === "along"
      ? `M${x - 9} ${y - 5} L${x - 15} ${y} L${x - 9} ${y + 5} Z M${x + 9} ${y - 5} L${x + 15} ${y} L${x + 9} ${y + 5} Z`
      : `M${x - 5} ${y - 9} L${x} ${y - 15} L${x + 5} ${y - 9} Z M${x - 5} ${y + 9} L${x} ${y + 15} L${x + 5} ${y + 9} Z`;
  return `${ring} ${heads}`;
}
