import type { KeyboardEvent, MouseEvent } from "react";
import { Stepper } from "./stepper.tsx";
import "./number-entry.css";

interface NumberEntryProps {
  readonly label: string;
  readonly id?: string | undefined;
  readonly name?: string;
  readonly text: string;
  readonly unit: string;
  readonly keypad?: "numeric" | "decimal" | "text";
  readonly placeholder?: string | undefined;
  readonly invalid: boolean;
  /** The ids of what explains it and of what is wrong with it. */
  readonly describedBy?: string;
  readonly onText: (text: string) => void;
  /** Takes so many steps up or down; without it there are no steppers. */
  readonly onStep?: ((steps: number) => void) | undefined;
  /** Whether there is nothing to step now, such as a radius of none. */
  readonly stepless?: boolean;
}

/** A number to type or to step. A tap selects its text, so that what is typed next takes its place. */
export function NumberEntry(props: NumberEntryProps) {
  const { label, id, text, unit, keypad = "text", invalid, describedBy, onText, onStep } = props;
  const { stepless = false } = props;
  const onKeyDown = (event: KeyboardEvent): void => {
    const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (direction === undefined || onStep === undefined) return;
    event.preventDefault();
    onStep(event.shiftKey ? 10 * direction : direction);
  };
  return (
    <>
      {onStep !== undefined && (
        <Stepper label={`Less: ${label}`} sign="−" disabled={stepless} onStep={() => onStep(-1)} />
      )}
      <span className="entry">
        <input
          id={id}
          name={props.name}
          aria-label={label}
          value={text}
          inputMode={keypad}
          placeholder={props.placeholder}
          autoComplete="off"
          autoCorrect="off"
          spellCheck={false}
          aria-invalid={invalid}
          aria-describedby={describedBy}
          onChange={({ target }) => onText(target.value)}
          onFocus={({ target }) => target.select()}
          onMouseDown={focusOnly}
          onKeyDown={onKeyDown}
        />
        <span className="unit">{unit}</span>
      </span>
      {onStep !== undefined && (
        <Stepper label={`More: ${label}`} sign="+" disabled={stepless} onStep={() => onStep(1)} />
      )}
    </>
  );
}

/** The first press only focuses, or the browser would put its cursor where it fell and undo the selection. */
function focusOnly(event: MouseEvent<HTMLInputElement>): void {
  if (event.button !== 0 || document.activeElement === event.currentTarget) return;
  event.preventDefault();
  event.currentTarget.focus();
  // A window that has not the keyboard itself is told of no focus.
  event.currentTarget.select();
}
