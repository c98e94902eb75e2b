import type { ReactNode } from "react";
import { sayPhrase } from "../../instrument/say-phrase.ts";
import type { Remedy, RemedyId, RemedyResult } from "../../profile/remedy.ts";
import { useRimwright } from "../store-context.ts";

interface Props {
  readonly result: RemedyResult;
  /** Its drawing, where it is the one drawn. */
  readonly figure: ReactNode;
  readonly onDraw: (id: RemedyId | null) => void;
  readonly onTake: (remedy: Remedy) => void;
}

/** One remedy: what to do, what else it changes; or why it is not to be had. */
export function RemedyCard({ result, figure, onDraw, onTake }: Props) {
  const units = useRimwright((state) => state.choices.units);
  if (!result.ok)
    return (
      <li className="remedy remedy-barred">
        <h4>{result.name}</h4>
        <p>Not possible: {sayPhrase(result.bar, units)}</p>
      </li>
    );
  const { remedy } = result;
  const drawn = figure !== null;
  return (
    <li className={drawn ? "remedy remedy-drawn" : "remedy"}>
      <h4>{remedy.name}</h4>
      <p className="remedy-act">{sayPhrase(remedy.act, units)}</p>
      <ul className="remedy-also">
        {remedy.also.map((phrase) => {
          const said = sayPhrase(phrase, units);
          return <li key={said}>{said}</li>;
        })}
      </ul>
      {figure}
      <div className="remedy-acts">
        <button
          type="button"
          aria-pressed={drawn}
          aria-label={`Draw before and after: ${remedy.name}`}
          onClick={() => onDraw(drawn ? null : remedy.id)}
        >
          Draw it
        </button>
        <button
          type="button"
          aria-label={`Take this correction: ${remedy.name}`}
          onClick={() => onTake(remedy)}
        >
          Take this
        </button>
      </div>
    </li>
  );
}
