import type { StoreApi } from "zustand/vanilla";

/** A part of what the page keeps, read and edited as a store of its own. */
export interface Part<T> extends Pick<StoreApi<T>, "getState" | "getInitialState" | "subscribe"> {
  setState(edit: (value: T) => T): void;
}

type Source = Pick<StoreApi<unknown>, "subscribe">;

/** A part made of `sources`. `read` must give the same object while nothing of it changes. */
export function partOf<T>(
  sources: readonly Source[],
  read: () => T,
  write: (before: T, after: T) => void,
): Part<T> {
  return {
    getState: read,
    getInitialState: read,
    subscribe(heard) {
      let known = read();
      const look = (): void => {
        const [before, after] = [known, read()];
        known = after;
        if (after !== before) heard(after, before);
      };
      const leave = sources.map((source) => source.subscribe(look));
      return () => {
        for (const one of leave) one();
      };
    },
    setState(edit) {
      const before = read();
      write(before, edit(before));
    },
  };
}

/** `make`, remembered for the last arguments. */
export function remembered<Given extends readonly unknown[], T>(
  make: (...given: Given) => T,
): (...given: Given) => T {
  let last: { readonly given: Given; readonly made: T } | null = null;
  return (...given) => {
    if (last === null || last.given.some((one, i) => one !== given[i]))
      last = { given, made: make(...given) };
    return last.made;
  };
}
