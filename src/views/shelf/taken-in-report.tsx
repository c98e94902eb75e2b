import type { TakenIn } from "../../store/intake.ts";

/** Reasons shown of a file that is wrong all over. */
const mostReasons = 20;

/** What a file brought, and what of it could not be read and why. */
export function TakenInReport({ taken, replaced, skipped, same, bad }: TakenIn) {
  const told = [
    `${taken} taken in`,
    ...(replaced > 0 ? [`${replaced} replaced, the former one undo away`] : []),
    ...(same > 0 ? [`${same} on the shelf already`] : []),
    ...(skipped > 0 ? [`${skipped} left out`] : []),
  ];
  return (
    <>
      <p>{told.join("; ")}.</p>
      {bad.length > 0 && (
        <>
          <p>These could not be read, and were left out:</p>
          <ul className="shelf-bad">
            {bad.slice(0, mostReasons).map(({ path, reason }) => (
              <li key={path + reason}>
                {path !== "" && <code>{path}</code>} {reason}
              </li>
            ))}
            {bad.length > mostReasons && <li>and {bad.length - mostReasons} more.</li>}
          </ul>
        </>
      )}
    </>
  );
}
