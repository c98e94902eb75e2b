/** What to trace for `mainThreadTasks`. */
export const taskCategories = ["toplevel"];

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the event's own thread, µs. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * Every task any page's main thread did while Chromium was traced, ms of its own processor time: what
 * other programs take of a shared machine is not counted. Throws where no task was traced.
 */
export function mainThreadTasks(trace: Buffer): readonly number[] {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: readonly TraceEvent[] };
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const main = new Set(
    traceEvents
      .filter(({ name, args }) => name === "thread_name" && args?.name === "CrRendererMain")
      .map(threadOf),
  );
  const times = traceEvents
    .filter((event) => event.name === "ThreadControllerImpl::RunTask" && main.has(threadOf(event)))
    .flatMap(({ tdur }) => (tdur === undefined ? [] : tdur / 1000));
  if (times.length === 0) throw new Error("No task of a page was traced.");
  return times;
}
