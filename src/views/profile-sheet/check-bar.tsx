/** A bar of known length: 100 mm and 4 in, drawn in millimetres so that nothing but the printer's own scale can alter it. */
export function CheckBar() {
  return (
    <figure className="check-bar">
      <svg
        role="img"
        aria-label="Bar to check the print's size: 100 mm, and 4 in"
        width="106mm"
        height="11mm"
        viewBox="0 0 106 11"
      >
        <path className="check-line" d="M2 3V7M102 3V7M2 5H102" data-role="100 mm" />
        <path className="check-line" d="M2 7V11M103.6 7V11M2 9H103.6" data-role="4 in" />
        <text className="check-text" x="52" y="4.2">
          100 mm
        </text>
        <text className="check-text" x="52" y="8.2">
          4 in
        </text>
      </svg>
      <figcaption>
        Measure this bar. If it is not 100 mm the print is out of size: trust its figures, and take
        no length off it.
      </figcaption>
    </figure>
  );
}
