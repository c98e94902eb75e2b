import { type ComponentType, useEffect, useState } from "react";

type Load = () => Promise<ComponentType>;

interface Props {
  readonly name: string;
  /** The same function each time: what it once gave is remembered by it. */
  readonly load: Load;
}

const loaded = new WeakMap<Load, ComponentType>();

/** A view whose code comes when it is first opened. Unlike a suspended one it is shown as soon as it is there: React holds those back for 0.3 s. */
export function LazyView({ name, load }: Props) {
  const [Body, setBody] = useState(() => loaded.get(load));
  const [fault, setFault] = useState<unknown>(null);
  useEffect(() => {
    if (loaded.has(load)) return;
    void load().then((body) => {
      loaded.set(load, body);
      setBody(() => body);
    }, setFault);
  }, [load]);
  if (fault !== null) throw fault;
  return Body === undefined ? <p className="loading">Opening {name}…</p> : <Body />;
}
