import { useEffect, useState } from "react";
import { encode } from "uqr";
import type { Instrument } from "../../instrument/instrument.ts";
import { openAddress } from "../../store/share.ts";

/** A code (QR, ISO/IEC 18004) of this page's own address with the whole instrument in it, for a tablet's camera. */
export function AddressCode({ instrument }: { readonly instrument: Instrument }) {
  const [path, setPath] = useState<Drawn | null>(null);
  useEffect(() => {
    let wanted = true;
    void openAddress(instrument, window.location.href).then((address) => {
      if (wanted) setPath(drawnCode(address));
    });
    return () => {
      wanted = false;
    };
  }, [instrument]);
  if (path === null) return <p className="sheet-code" />;
  return (
    <figure className="sheet-code">
      <svg
        role="img"
        aria-label="Code that opens this instrument"
        viewBox={`0 0 ${path.size} ${path.size}`}
      >
        <path d={path.d} />
      </svg>
      <figcaption>opens this instrument</figcaption>
    </figure>
  );
}

interface Drawn {
  readonly size: number;
  readonly d: string;
}

/** A code's dark modules as squares of one unit; null where the address is too long for any code. */
function drawnCode(address: string): Drawn | null {
  try {
    const { data, size } = encode(address, { ecc: "L", border: 4 });
    const d = data
      .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : "")))
      .join("");
    return { size, d };
  } catch {
    return null;
  }
}
