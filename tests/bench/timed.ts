/** How long it takes, ms: the middle of five times. */
export function timed(run: () => unknown): number {
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[2] ?? Number.NaN;
}
