import { type PointerEvent, useEffect, useRef } from "react";

interface Props {
  readonly label: string;
  readonly sign: string;
  readonly disabled: boolean;
  readonly onStep: () => void;
}

const firstPause = 400;
const nextPause = 90;

/** A button that steps when pressed and goes on while it is held. The arrow keys do the same in the field itself. */
export function Stepper({ label, sign, disabled, onStep }: Props) {
  const step = useRef(onStep);
  step.current = onStep;
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const stop = (): void => clearTimeout(timer.current);
  useEffect(() => () => clearTimeout(timer.current), []);
  const repeat = (pause: number): void => {
    timer.current = setTimeout(() => {
      step.current();
      repeat(nextPause);
    }, pause);
  };
  const press = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    stop();
    step.current();
    repeat(firstPause);
  };
  return (
    <button
      type="button"
      className="stepper"
      aria-label={label}
      disabled={disabled}
      tabIndex={-1}
      onPointerDown={press}
      onPointerUp={stop}
      onPointerLeave={stop}
      onPointerCancel={stop}
      onContextMenu={(event) => event.preventDefault()}
      // A click without a press: from a keyboard or a screen reader.
      onClick={({ detail }) => {
        if (detail === 0) step.current();
      }}
    >
      {sign}
    </button>
  );
}
