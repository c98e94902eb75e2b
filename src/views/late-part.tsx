import { type ComponentType, type ReactNode, useEffect, useState } from "react";
import { ErrorBoundary } from "./error-boundary.tsx";
import { fetchLate } from "./fetch-late.ts";

interface LatePart<Props> {
  /** As the messages name it: "The list of cautions". */
  readonly what: string;
  readonly load: () => Promise<ComponentType<Props>>;
  /** What stands in its place while it comes. */
  readonly meanwhile?: ReactNode;
}

/**
 * A part of the page whose code comes when it is first shown. Should it not come, that is said in its
 * place, and it is asked for again; should it fail, it fails alone. Unlike a suspended one it is shown as
 * soon as it is there: React holds those back for 0.3 s.
 */
export const latePart =
  <Props extends object>(part: LatePart<Props>): ComponentType<Props> =>
  (props) => <Late part={part} given={props} />;

/** The parts that have come. */
const bodies = new WeakMap<object, ComponentType<never>>();

function Late<Props extends object>({
  part,
  given,
}: {
  readonly part: LatePart<Props>;
  readonly given: Props;
}) {
  const [Body, setBody] = useState(() => bodies.get(part) as ComponentType<Props> | undefined);
  const [missing, setMissing] = useState(false);
  useEffect(() => {
    if (bodies.has(part)) return;
    return fetchLate(part.load, {
      onPart: (body) => {
        bodies.set(part, body as ComponentType<never>);
        setBody(() => body);
      },
      onFailure: () => setMissing(true),
    });
  }, [part]);
  if (Body === undefined) return missing ? <NotFetched what={part.what} /> : part.meanwhile;
  return (
    <ErrorBoundary what={part.what}>
      <Body {...given} />
    </ErrorBoundary>
  );
}

interface NotFetchedProps {
  readonly what: string;
  /** How it is asked for again. */
  readonly again?: string;
}

/** Says that a part is not there yet, and what can be done about it. */
export function NotFetched({ what, again = "It is tried again by itself" }: NotFetchedProps) {
  return (
    <p className="not-fetched" role="status">
      {what} could not be fetched. {again}; if it does not come, reload the page.{" "}
      <button type="button" onClick={() => window.location.reload()}>
        Reload
      </button>
    </p>
  );
}
