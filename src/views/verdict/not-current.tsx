import type { FieldPath } from "../../instrument/fields.ts";
import { fieldAt } from "../../instrument/fields.ts";
import { sayPhrase } from "../../instrument/phrase.ts";
import type { Refusal } from "../../profile/outcome.ts";
import { useGoToField } from "../fields/go-to-field.ts";
import { UseNearest } from "../fields/use-nearest.tsx";
import { useRimwright } from "../store-context.ts";

interface Props {
  /** Why the fields have no plan; null when they have one. */
  readonly refusal: Refusal | null;
  /** The fields whose text states nothing. */
  readonly unread: readonly FieldPath[];
}

/** Why what is shown is not what the fields state, and the ways out. */
export function NotCurrent({ refusal, unread }: Props) {
  if (refusal !== null) return <Refused refusal={refusal} />;
  const first = unread[0];
  return first === undefined ? null : <Unread path={first} more={unread.length - 1} />;
}

function Refused({ refusal }: { readonly refusal: Refusal }) {
  const units = useRimwright((state) => state.choices.units);
  return (
    <div className="not-current">
      <p>
        <strong>This is the last plan that worked.</strong>{" "}
        <span className="why">{sayPhrase(refusal.why, units)}</span>
      </p>
      <div className="not-current-acts">
        <GoTo path={refusal.field} />
        <UseNearest trouble={refusal} />
      </div>
    </div>
  );
}

function Unread({ path, more }: { path: FieldPath; more: number }) {
  const kind = useRimwright((state) => state.instrument.target.kind);
  const { label } = fieldAt(path, kind);
  const others =
    more === 0 ? "" : more === 1 ? " and one other field" : ` and ${more} other fields`;
  return (
    <div className="not-current">
      <p>
        <strong>Not all you typed is in this plan.</strong>{" "}
        <span className="why">
          “{label}”{others} cannot be used as typed: the last number that could be is used instead.
        </span>
      </p>
      <div className="not-current-acts">
        <GoTo path={path} />
      </div>
    </div>
  );
}

function GoTo({ path }: { readonly path: FieldPath }) {
  const kind = useRimwright((state) => state.instrument.target.kind);
  const goTo = useGoToField();
  const { label } = fieldAt(path, kind);
  return (
    <button type="button" onClick={() => goTo(path)}>
      Go to <span className="wide">{label.toLowerCase()}</span>
      <span className="narrow">it</span>
    </button>
  );
}
