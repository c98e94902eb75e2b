/** A bar of known length: 100 mm and 4 in, drawn in millimetres so that nothing but the printer's own scale can alter it. */
export function CheckBar() {
  return (
    <figure className="check-bar">
      <svg
        role="img"
        aria-label="Bar to check the print's size: 100 mm, and 4 in"
        width="106mm"
        height="9mm"
        viewBox="0 0 106 9"
      >
        <path className="check-line" d="M2 1V5M102 1V5M2 3H102" data-role="100 mm" />
        <path className="check-line" d="M2 5V8M103.6 5V8M2 6.5H103.6" data-role="4 in" />
        <text className="check-text" x="50" y="2.6">
          100 mm
        </text>
        <text className="check-text" x="78" y="8.6">
          4 in
        </text>
      </svg>
      <figcaption>
        Measure this bar: if it is not 100 mm, the print is out of size and no length on it can be
        taken off with dividers. The figures still hold.
      </figcaption>
    </figure>
  );
}
