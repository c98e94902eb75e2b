import { useState } from "react";

/** The list before while it holds the same, item for item: what is made of it need not be made again. */
export function useSame<Item>(
  items: readonly Item[],
  isSame: (a: Item, b: Item | undefined) => boolean = Object.is,
): readonly Item[] {
  const [kept, keep] = useState(items);
  const holdsSame = kept.length === items.length && kept.every((one, i) => isSame(one, items[i]));
  if (!holdsSame) keep(items);
  return holdsSame ? kept : items;
}
