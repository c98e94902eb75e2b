import type { Givens } from "../../profile/givens.ts";
import { type BraceWish, braceShape, mostBraces, type Plate, useBraces } from "./braces.tsx";
import { LengthEntry } from "./length-entry.tsx";

interface Props {
  readonly plate: Plate;
  readonly givens: Givens;
}

/** The braces of one plate, each with its own length and radius. */
export function BraceEntries({ plate, givens }: Props) {
  const [wishes, choose] = useBraces(plate);
  const change = (key: number, next: Omit<BraceWish, "key">): void =>
    choose(wishes.map((wish) => (wish.key === key ? { ...wish, ...next } : wish)));
  const add = (): void => {
    const key = 1 + Math.max(...wishes.map((wish) => wish.key));
    choose([...wishes, { ...wishes.at(-1), key }]);
  };
  return (
    <>
      {wishes.map((wish, i) => {
        const name = wishes.length === 1 ? `${plate} brace` : `${plate} brace ${i + 1}`;
        const { length, radius } = braceShape(plate, wish, givens);
        return (
          <div className="value-entries" key={wish.key}>
            <b>{name}</b>
            <LengthEntry
              {...{ label: `${name}, length`, shown: "length", value: length }}
              {...{ least: 20, most: 1000 }}
              onChange={(mm) => mm !== null && change(wish.key, { length: mm })}
            />
            <LengthEntry
              {...{ label: `${name}, radius`, shown: "radius", value: radius }}
              {...{ least: 100, most: 1e6, none: "straight", feet: true }}
              onChange={(mm) => change(wish.key, { radius: mm })}
            />
            {wishes.length > 1 && (
              <button
                type="button"
                aria-label={`Remove ${name.toLowerCase()}`}
                onClick={() => choose(wishes.filter(({ key }) => key !== wish.key))}
              >
                Remove
              </button>
            )}
          </div>
        );
      })}
      {wishes.length < mostBraces && (
        <button type="button" onClick={add}>
          Add a {plate.toLowerCase()} brace
        </button>
      )}
    </>
  );
}
