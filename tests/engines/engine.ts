/** A browser to drive: what one builder does is written once, and done in every engine. */
export interface Engine {
  /** Opens another window on the same storage, of the size the engine was opened at. */
  openTab(): Promise<Tab>;
  /** What its pages did that a page must never do: console errors and warnings, uncaught errors, violations of the policy. */
  faults(): readonly string[];
  /** The folder that files go to which its pages hand out to be saved. */
  readonly downloads: string;
  close(): Promise<void>;
}

/** One window of an engine. Places are in CSS px from the upper left of what the window shows. */
export interface Tab {
  goto(address: string): Promise<void>;
  reload(): Promise<void>;
  /** Runs `act` in the page: it may use its arguments and the page's own names, nothing else. */
  run<Args extends unknown[], Value>(
    act: (...args: Args) => Value | Promise<Value>,
    ...args: Args
  ): Promise<Value>;
  /** Presses the mouse's button at the first place, moves through the rest, and lets go at the last. */
  drag(first: Place, ...rest: readonly Place[]): Promise<void>;
  /** Types each character by a key of its own. */
  type(text: string): Promise<void>;
  press(key: Key): Promise<void>;
  /** Chooses a file for the page's only file picker. */
  giveFile(path: string): Promise<void>;
  /** What the window shows, as a PNG. */
  picture(): Promise<Uint8Array>;
  close(): Promise<void>;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

export type Key = "ArrowUp" | "ArrowDown";

/** How an engine's windows look. */
export interface Look {
  readonly width: number;
  readonly height: number;
  readonly dark: boolean;
}
