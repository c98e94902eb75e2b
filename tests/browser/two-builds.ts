import { createServer } from "node:http";
import type { AddressInfo } from "node:net";

/** A server of the page that can go over to a second build, and be taken away. */
export interface TwoBuilds {
  readonly address: string;
  /** From now on it serves a build that differs from the first in one mark of its page. */
  goOver(): void;
  stop(): Promise<void>;
}

/** Which build a page says it is of, for `page.evaluate`. */
export const buildShown = (): string =>
  document.querySelector<HTMLMetaElement>("meta[name=build]")?.content ?? "first";

/**
 * Serves what is served at `source`, under `folder` and nowhere else. The second build's page has another
 * content, and so another revision in its worker's list.
 */
export async function twoBuilds(source: string, folder = "/"): Promise<TwoBuilds> {
  let second = false;
  const server = createServer(async (request, response) => {
    const asked = new URL(request.url ?? "/", source).pathname;
    if (!asked.startsWith(folder)) return response.writeHead(404).end();
    const pathname = asked.slice(folder.length - 1);
    const answer = await fetch(new URL(pathname, source));
    const type = answer.headers.get("content-type") ?? "application/octet-stream";
    response.writeHead(answer.status, { "content-type": type, "cache-control": "no-cache" });
    if (!second) return response.end(Buffer.from(await answer.arrayBuffer()));
    if (pathname === "/sw.js") return response.end(revised(await answer.text()));
    if (type.startsWith("text/html"))
      return response.end(
        (await answer.text()).replace("</head>", '<meta name="build" content="second"></head>'),
      );
    return response.end(Buffer.from(await answer.arrayBuffer()));
  });
  await new Promise<void>((listening) => server.listen(0, "localhost", listening));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}${folder}`,
    goOver: () => {
      second = true;
    },
    stop: async () => {
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
    },
  };
}

function revised(worker: string): string {
  const after = worker.replace(
    /(url:\s*"index\.html",\s*revision:\s*")[^"]*|(revision:\s*")[^"]*(",\s*url:\s*"index\.html")/,
    "$1$2second-build$3",
  );
  if (after === worker) throw new Error("The worker does not list the page with a revision.");
  return after;
}
