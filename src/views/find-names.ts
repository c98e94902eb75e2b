/** What a list calls an instrument that has no name. */
export const nameOf = (name: string): string => (name.trim() === "" ? "Unnamed instrument" : name);

/** Whether a name has every word, in any case and without regard to accents. */
export function hasWords(name: string, words: string): boolean {
  const held = plain(nameOf(name));
  return plain(words)
    .trim()
    .split(/\s+/)
    .every((word) => held.includes(word));
}

const plain = (text: string): string =>
  text.normalize("NFD").replace(/\p{M}/gu, "").toLocaleLowerCase();

const collator = new Intl.Collator(undefined, { numeric: true });

/** The order of names in a list: numbers in them by what they count. */
export const byName = (a: string, b: string): number => collator.compare(nameOf(a), nameOf(b));
