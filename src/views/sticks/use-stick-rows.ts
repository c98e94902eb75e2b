import { useMemo } from "react";
import type { Instrument } from "../../instrument/instrument.ts";
import { type ReadyForSticks, readyForSticks, type Stick } from "../../profile/sticks/on-stick.ts";
import type { OnStickJob, StickWantsJob } from "../../worker/messages.ts";
import { useJob } from "../use-job.ts";
import type { StickRow } from "./stick-columns.ts";
import type { StickInstruments } from "./use-stick-instruments.ts";

/** So many instruments the page lays on a stick itself within a frame; of more, only those in sight. */
const mostAtOnce = 40;

/** Instruments made ready, with the width they are ready for. */
const ready = new WeakMap<Instrument, readonly [width: number | null, ready: ReadyForSticks]>();

function readyOf(instrument: Instrument, width: number | null): ReadyForSticks {
  const known = ready.get(instrument);
  if (known?.[0] === width) return known[1];
  const made = readyForSticks(instrument, width);
  ready.set(instrument, [width, made]);
  return made;
}

/** What a stick gives of an instrument, worked out here and now. */
export const onStickNow = (instrument: Instrument, { thickness, width }: Stick) =>
  readyOf(instrument, width)(thickness);

export interface StickRows {
  readonly rows: readonly StickRow[];
  /** How much is done of what the worker does, 0 to 1. */
  readonly share: number;
  readonly failed: boolean;
}

/** What a job has answered by instrument, whichever were asked about since. */
function answersOf<Answer>(
  progress: { readonly answer: readonly Answer[] } | null,
  shown: { readonly instruments: readonly Instrument[] } | null,
): ReadonlyMap<Instrument, Answer> {
  const answers = progress?.answer ?? [];
  const asked = shown?.instruments.slice(0, answers.length) ?? [];
  return new Map(asked.map((instrument, i) => [instrument, answers[i] as Answer]));
}

/** A row for each instrument. Many are worked out in the worker, from where they come a little behind a stick that is dragged. */
export function useStickRows(
  { instruments, modelOf }: StickInstruments,
  stick: Stick,
  owned: readonly Stick[],
): StickRows {
  const isFew = instruments.length <= mostAtOnce;
  const onJob = useMemo(
    (): OnStickJob | null => (isFew ? null : { kind: "on-stick", instruments, stick }),
    [isFew, instruments, stick],
  );
  const wantsJob = useMemo(
    (): StickWantsJob => ({ kind: "stick-wants", instruments, owned }),
    [instruments, owned],
  );
  const on = useJob<"on-stick">(onJob);
  const wants = useJob<"stick-wants">(wantsJob);
  const { progress: onProgress, shown: onShown } = on;
  const { progress: wantsProgress, shown: wantsShown } = wants;
  const onOf = useMemo(() => answersOf(onProgress, onShown), [onProgress, onShown]);
  const wantsOf = useMemo(() => answersOf(wantsProgress, wantsShown), [wantsProgress, wantsShown]);
  // Of many the order follows the worker, so that a stick that is dragged sorts no thousands.
  const now = isFew ? stick : null;
  const rows = useMemo(
    () =>
      instruments.map(
        (instrument): StickRow => ({
          instrument,
          model: modelOf.get(instrument.id) ?? null,
          on: now === null ? (onOf.get(instrument) ?? null) : onStickNow(instrument, now),
          wants: wantsOf.get(instrument) ?? null,
        }),
      ),
    [instruments, modelOf, now, onOf, wantsOf],
  );
  const shares = [isFew ? 1 : (on.progress?.share ?? 0), wants.progress?.share ?? 0];
  return {
    rows,
    share: Math.min(...shares),
    failed: on.state === "failed" || wants.state === "failed",
  };
}
