/** What no drawing says: the dangers of the work itself. */
export function Cautions() {
  return (
    <details className="cautions">
      <summary>Cautions, and what this does not know</summary>
      <ul>
        <li>
          Wood dust causes cancer (IARC, group 1). Sand with extraction at the source and a fitted
          mask, and follow the limits of your own country.
        </li>
        <li>
          A dish or a board under power takes fingers’ skin and throws what is loose. Keep edges,
          sleeves and hands clear; wear eye protection.
        </li>
        <li>
          Clamps, go-bars and a glue-up under load let go without warning. Stand aside of them.
        </li>
        <li>Strings at tension can break, and a bridge or a neck can let go. Guard your eyes.</li>
        <li>
          The figures are geometry: no stiffness, no strength, and no top that moves under the
          strings. Check on scrap, and measure as you go.
        </li>
      </ul>
    </details>
  );
}
