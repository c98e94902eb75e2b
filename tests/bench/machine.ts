import { cpus, loadavg, totalmem } from "node:os";

/** The machine the figures come from, and how busy others keep it: with a load near its processors' number, times mean little. */
export function machine(): string {
  const processors = cpus();
  const model = processors[0]?.model.trim() ?? "unknown processor";
  const gigabytes = Math.round(totalmem() / 2 ** 30);
  const load = loadavg()[0]?.toFixed(1);
  return `${processors.length} × ${model}, ${gigabytes} GB, ${process.platform} ${process.arch}, Node ${process.versions.node}, load before the run ${load}`;
}
