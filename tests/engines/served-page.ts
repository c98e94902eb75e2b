import { fileURLToPath } from "node:url";
import { preview } from "vite";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** The built page as a builder gets it, on a server that can be taken away. */
export interface ServedPage {
  readonly address: string;
  stop(): Promise<void>;
}

export async function servePage(): Promise<ServedPage> {
  const server = await preview({ root, logLevel: "warn", preview: { port: 4300, open: false } });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new Error("The preview server has no local address.");
  let stopped: Promise<void> | null = null;
  return {
    address,
    stop: () => {
      stopped ??= server.close();
      return stopped;
    },
  };
}
