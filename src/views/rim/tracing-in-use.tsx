import type { Tracing } from "../../instrument/instrument.ts";
import { type TracedHalves, traceOutline } from "../../store/document/outline-edits.ts";
import { useEdit } from "../store-context.ts";

/** The tracings an instrument follows, and what can be done with them in one tap. */
export function TracingInUse({ bass, treble }: TracedHalves) {
  const edit = useEdit();
  const button = (name: string, halves: TracedHalves) => (
    <button type="button" onClick={() => edit((state) => traceOutline(state, halves))}>
      {name}
    </button>
  );
  return (
    <>
      <p>{sayHalves(bass, treble)}</p>
      <p className="rim-buttons">
        {button("Take the tracing off", { bass: null, treble: null })}
        {treble !== null && (
          <>
            {button("Mirror the bass half", { bass, treble: null })}
            {button("Mirror the treble half", { bass: treble, treble: null })}
            {bass !== null && button("Change the sides over", { bass: treble, treble: bass })}
          </>
        )}
      </p>
    </>
  );
}

function sayHalves(bass: Tracing | null, treble: Tracing | null): string {
  if (treble === null)
    return `This instrument follows a traced outline of ${bass?.length} places; its stated widths and places of bouts and waist shape nothing.`;
  return bass === null
    ? `The bass half is drawn through the stated widths; the treble half follows a tracing of ${treble.length} places.`
    : `The bass half follows a traced outline of ${bass.length} places, the treble half one of ${treble.length}; the stated widths and places of bouts and waist shape nothing.`;
}
