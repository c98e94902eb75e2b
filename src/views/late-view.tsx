import { type ComponentType, useEffect, useState } from "react";

/** A view whose code comes when it is first opened. Unlike a suspended one it is shown as soon as it is there: React holds those back for 0.3 s. */
export function lateView(name: string, load: () => Promise<ComponentType>): ComponentType {
  let known: ComponentType | null = null;
  // biome-ignore lint/correctness/noComponentHookFactories: made once for each view, where the views are listed.
  return function LateView() {
    const [Body, setBody] = useState(() => known);
    const [fault, setFault] = useState<unknown>(null);
    useEffect(() => {
      if (known !== null) return;
      void load().then((loaded) => {
        known = loaded;
        setBody(() => loaded);
      }, setFault);
    }, []);
    if (fault !== null) throw fault;
    return Body === null ? <p className="loading">Opening {name}…</p> : <Body />;
  };
}
