import { type RefObject, useLayoutEffect, useRef, useState } from "react";

export interface Room {
  readonly width: number;
  readonly height: number;
}

/** The size of an element in whole px, kept up to date. `first` stands until it is laid out. */
export function useRoom(first: Room): readonly [RefObject<HTMLDivElement | null>, Room] {
  const element = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState(first);
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return;
    const measure = (): void => {
      const [width, height] = [Math.floor(current.clientWidth), Math.floor(current.clientHeight)];
      if (width === 0 || height === 0) return;
      setRoom((before) =>
        before.width === width && before.height === height ? before : { width, height },
      );
    };
    measure();
    if (typeof ResizeObserver === "undefined") return;
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, []);
  return [element, room];
}
