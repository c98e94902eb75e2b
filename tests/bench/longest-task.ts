/** What to trace for `longestTask`. */
export const taskCategories = ["toplevel", "disabled-by-default-devtools.timeline"];

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Processor time of the event's own thread, µs. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * The longest task any page's main thread did while Chromium was traced, ms of its own processor
 * time: what other programs take of a shared machine is not counted. Throws where no task was traced.
 */
export function longestTask(trace: Buffer): number {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: readonly TraceEvent[] };
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const main = new Set(
    traceEvents
      .filter(({ name, args }) => name === "thread_name" && args?.name === "CrRendererMain")
      .map(threadOf),
  );
  const tasks = traceEvents.filter(
    (event) => event.name.endsWith("RunTask") && main.has(threadOf(event)),
  );
  const times = tasks.flatMap(({ tdur }) => tdur ?? []);
  if (times.length === 0) throw new Error("No task of a page was traced.");
  return times.reduce((most, time) => Math.max(most, time), 0) / 1000;
}
