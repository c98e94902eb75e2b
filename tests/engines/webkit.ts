import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { mkdir, mkdtemp, rm } from "node:fs/promises";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Engine, Key, Look, Place, Tab } from "./engine.ts";
import { webKitDriverPath, xvfbPath } from "./install.ts";

const browser = fileURLToPath(new URL("webkit-window.py", import.meta.url));

/** There is no graphics card: drawing by the processor at once costs a quarter less than playing one. */
const drawnByProcessor = { LIBGL_ALWAYS_SOFTWARE: "1", WEBKIT_SKIA_ENABLE_CPU_RENDERING: "1" };

/** The engine's name for what today's tablets have and it leaves out, and for what older ones lack. */
const today = ["+StorageAPI", "+StorageAPIEstimate"];
const older = ["-PopoverAttribute", "-StorageAPIEstimate", "-StorageAPI"];

/**
 * WebKitGTK, the engine of most tablets' browser, through WebDriver (W3C) on a screen of its own.
 * `age` older: without popovers and without word on storage, as in Safari 16.4.
 */
export async function openWebKit(look: Look, age: "today" | "older" = "today"): Promise<Engine> {
  const folder = await mkdtemp(join(tmpdir(), "rimwright-webkit-"));
  await mkdir(join(folder, "downloads"));
  const screen = spawn(xvfbPath, ["-displayfd", "3", "-screen", "0", "1600x1600x24"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  const display = await firstLine(screen);
  const port = await freePort();
  // In a group of its own: the driver leaves its browser behind when it is ended alone.
  const driver = spawn(webKitDriverPath, [`--port=${port}`], {
    detached: true,
    stdio: "ignore",
    env: { ...process.env, ...drawnByProcessor, DISPLAY: `:${display}`, HOME: folder },
  });
  const close = async (): Promise<void> => {
    if (driver.pid !== undefined) process.kill(-driver.pid, "SIGKILL");
    screen.kill();
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    const { width, height, dark } = look;
    const scheme = dark ? "dark" : "light";
    const switches = age === "today" ? today : older;
    const session = await begin(`http://127.0.0.1:${port}`, [
      browser,
      ...[String(width), String(height), scheme, folder, `(${watch})()`, ...switches],
    ]);
    let first: string | null = await session.get<string>("window");
    return {
      openTab: async () => {
        const handle =
          first ??
          (await session.post<{ handle: string }>("window/new", { type: "window" })).handle;
        first = null;
        return tabOn(session, handle);
      },
      faults: () => linesOf(join(folder, "faults")),
      downloads: join(folder, "downloads"),
      close: async () => {
        await session.end();
        await close();
      },
    };
  } catch (fault) {
    await close();
    throw fault;
  }
}

/** Runs before a page's own script, and posts what a page must never do. */
function watch(): void {
  const page = window as unknown as {
    webkit: { messageHandlers: { fault: { postMessage(text: string): void } } };
  };
  const post = (...told: unknown[]): void =>
    page.webkit.messageHandlers.fault.postMessage(told.map(String).join(" "));
  addEventListener("error", ({ message }) => post("uncaught:", message));
  addEventListener("unhandledrejection", ({ reason }) => post("uncaught:", reason));
  document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) =>
    post("against the policy:", effectiveDirective, blockedURI),
  );
  console.error = (...told) => post("console error:", ...told);
  console.warn = (...told) => post("console warning:", ...told);
}

const linesOf = (path: string): string[] =>
  existsSync(path) ? readFileSync(path, "utf8").trim().split("\n") : [];

const firstLine = ({ stdio, ...screen }: ChildProcess): Promise<string> =>
  new Promise((read, fail) => {
    stdio[3]?.once("data", (text) => read(String(text).trim()));
    stdio[3]?.once("close", () => fail(new Error(`Xvfb ended: ${screen.exitCode}`)));
  });

const freePort = (): Promise<number> =>
  new Promise((found, fail) => {
    const server = createServer().once("error", fail);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => found(typeof address === "object" && address ? address.port : 0));
    });
  });

/** Code points WebDriver gives to keys that write nothing (W3C WebDriver, 17.4.2). */
const keyCodes: Readonly<Record<Key, string>> = {
  ArrowUp: "\uE013",
  ArrowDown: "\uE015",
};

/** What a WebDriver answer names an element by (W3C WebDriver, 11). */
const elementKey = "element-6066-11e4-a52e-4f735466cecf";

/** Commands to a session's windows, of which one at a time is talked to. */
interface Session {
  /** Has the commands that follow go to this window. */
  choose(handle: string): Promise<void>;
  post<Value>(command: string, body?: object): Promise<Value>;
  get<Value>(command: string): Promise<Value>;
  delete(command: string): Promise<unknown>;
  end(): Promise<unknown>;
}

async function begin(driver: string, args: readonly string[]): Promise<Session> {
  const options = { binary: "/usr/bin/python3", args };
  const capabilities = { alwaysMatch: { "webkitgtk:browserOptions": options } };
  const { sessionId } = await ask<{ sessionId: string }>("POST", `${driver}/session`, {
    capabilities,
  });
  const address = `${driver}/session/${sessionId}`;
  let chosen = "";
  return {
    choose: async (handle) => {
      if (handle !== chosen) await ask("POST", `${address}/window`, { handle });
      chosen = handle;
    },
    post: (command, body = {}) => ask("POST", `${address}/${command}`, body),
    get: (command) => ask("GET", `${address}/${command}`),
    delete: (command) => ask("DELETE", `${address}/${command}`),
    end: () => ask("DELETE", address),
  };
}

function tabOn(session: Session, handle: string): Tab {
  const choose = () => session.choose(handle);
  const post = async <Value>(command: string, body?: object): Promise<Value> => {
    await choose();
    return session.post(command, body);
  };
  const act = (type: "pointer" | "key", actions: readonly object[]): Promise<void> =>
    post("actions", { actions: [{ type, id: type, actions }] });
  const type = (text: string): Promise<void> => act("key", [...text].flatMap(keyStroke));
  return {
    goto: (url) => post("url", { url }),
    reload: () => post("refresh"),
    run: (script, ...args) =>
      post("execute/sync", { script: `return (${script}).apply(null, arguments)`, args }),
    drag: (first, ...rest) =>
      act("pointer", [
        moveTo(first),
        { type: "pointerDown", button: 0 },
        ...rest.map(moveTo),
        { type: "pointerUp", button: 0 },
      ]),
    type,
    press: (key) => type(keyCodes[key]),
    giveFile: async (path) => {
      const [using, value] = ["css selector", "input[type=file]"];
      const picker = await post<Record<string, string>>("element", { using, value });
      await post(`element/${picker[elementKey]}/value`, { text: path });
    },
    picture: async () => {
      await choose();
      return Buffer.from(await session.get<string>("screenshot"), "base64");
    },
    close: async () => {
      await choose();
      await session.delete("window");
    },
  };
}

const moveTo = ({ x, y }: Place) => ({
  type: "pointerMove",
  duration: 0,
  x: Math.round(x),
  y: Math.round(y),
});

const keyStroke = (value: string) => [
  { type: "keyDown", value },
  { type: "keyUp", value },
];

/** One WebDriver command; while the driver starts it is asked again. */
async function ask<Value>(method: string, address: string, body?: object): Promise<Value> {
  const answer = await reach(address, {
    method,
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const { value } = (await answer.json()) as { value: Value & { message?: string } };
  if (!answer.ok) throw new Error(`WebKit: ${value.message ?? answer.statusText}`);
  return value;
}

async function reach(address: string, request: RequestInit): Promise<Response> {
  for (let attempt = 0; attempt < 100; attempt++) {
    try {
      return await fetch(address, request);
    } catch {
      await new Promise((wait) => setTimeout(wait, 50));
    }
  }
  return fetch(address, request);
}
