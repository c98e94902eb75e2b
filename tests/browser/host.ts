import { createHash } from "node:crypto";
import { createServer, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

/** How an answer can go wrong: not there, a sign-in page in its place, something else of its kind, no answer at all. */
export const faults = ["404", "HTML", "garbage", "dropped"] as const;
export type Fault = (typeof faults)[number];

/** A host of the page that can go over to a next build, give bad answers, and be taken away. */
export interface Host {
  readonly address: string;
  /** From now on it serves a build of which every file is told to be newer, and the page is. */
  goOver(): void;
  /** Answers for the files whose path it holds of, in this way, until `mend`. */
  spoil(fault: Fault, path: (path: string) => boolean): void;
  mend(): void;
  /** The paths that were asked for while they were spoiled, since `spoil`. */
  spoiled(): ReadonlySet<string>;
  stop(): Promise<void>;
}

/** Which build a page says it is of, for `page.evaluate`. The first is 1. */
export const buildShown = (): number =>
  Number(document.querySelector<HTMLMetaElement>("meta[name=build]")?.content ?? 1);

/** Serves what is served at `source`, under `folder` and nowhere else. */
export async function hostOf(source: string, folder = "/"): Promise<Host> {
  let build = 1;
  let bad: { readonly fault: Fault; readonly path: (path: string) => boolean } | null = null;
  let met = new Set<string>();
  const server = createServer(async (request, response) => {
    const asked = new URL(request.url ?? "/", source).pathname;
    if (!asked.startsWith(folder)) return response.writeHead(404).end();
    const path = asked.slice(folder.length - 1);
    if (bad?.path(path)) {
      met.add(path);
      return answerBadly(response, bad.fault, path);
    }
    const { status, type, body } = await answerFrom(new URL(path, source));
    response.writeHead(status, { "content-type": type, "cache-control": "no-cache" });
    if (path === "/sw.js") {
      const page = await answerFrom(new URL("/index.html", source));
      return response.end(workerOf(build, String(body), String(page.body)));
    }
    if (type.startsWith("text/html")) return response.end(pageOf(build, String(body)));
    return response.end(body);
  });
  await new Promise<void>((listening) => server.listen(0, "localhost", listening));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}${folder}`,
    goOver: () => {
      build += 1;
    },
    spoil: (fault, path) => {
      bad = { fault, path };
      met = new Set();
    },
    mend: () => {
      bad = null;
    },
    spoiled: () => met,
    stop: async () => {
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
    },
  };
}

interface Answer {
  readonly status: number;
  readonly type: string;
  readonly body: Buffer;
}

/** What was answered at each address: the build does not change while it is tested, and is asked for thousands of times. */
const answers = new Map<string, Promise<Answer>>();

function answerFrom({ href }: URL): Promise<Answer> {
  const known = answers.get(href) ?? ask(href);
  answers.set(href, known);
  return known;
}

async function ask(address: string): Promise<Answer> {
  const answer = await fetch(address);
  const type = answer.headers.get("content-type") ?? "application/octet-stream";
  return { status: answer.status, type, body: Buffer.from(await answer.arrayBuffer()) };
}

function answerBadly(response: ServerResponse, fault: Fault, path: string): void {
  const type = path.endsWith(".css") ? "text/css" : "text/javascript";
  if (fault === "404") response.writeHead(404).end();
  else if (fault === "HTML")
    response.writeHead(200, { "content-type": "text/html" }).end("<!doctype html><p>Room number?");
  else if (fault === "garbage") response.writeHead(200, { "content-type": type }).end("}{ half a");
  else response.destroy();
}

const pageOf = (build: number, page: string): string =>
  build === 1 ? page : page.replace("</head>", `<meta name="build" content="${build}"></head>`);

/** The worker of a build: its list has the page's own digest, and every file under a new name. */
function workerOf(build: number, worker: string, page: string): string {
  if (build === 1) return worker;
  const digest = `sha384-${createHash("sha384").update(pageOf(build, page)).digest("base64")}`;
  const after = worker
    .replace(/(url:"index\.html",revision:"[^"]*",integrity:")[^"]*/, `$1${digest}`)
    .replaceAll('revision:"', `revision:"${build} `);
  if (!after.includes(digest)) throw new Error("The worker does not list the page's digest.");
  return after;
}
