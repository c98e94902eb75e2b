import { useEffect, useState } from "react";
import { encode } from "uqr";
import type { Instrument } from "../../instrument/instrument.ts";
import { openAddress } from "../../store/files/share.ts";
import { type Reach, reachOf, useSharedBase } from "../page-address.ts";

/** A code (QR, ISO/IEC 18004) of the page's address with the whole instrument in it, for a tablet's camera. */
export function AddressCode({ instrument }: { readonly instrument: Instrument }) {
  const [code, setCode] = useState<Code | "none" | null>(null);
  const base = useSharedBase();
  useEffect(() => {
    let wanted = true;
    void openAddress(instrument, base).then((address) => {
      if (wanted) setCode(codeOf(address) ?? "none");
    });
    return () => {
      wanted = false;
    };
  }, [instrument, base]);
  if (code === null) return <figure className="sheet-code" />;
  if (code === "none")
    return (
      <p className="sheet-code">
        No code: this instrument holds more than a camera could read from a page. Keep its file.
      </p>
    );
  return (
    <figure className="sheet-code">
      <svg
        role="img"
        aria-label="Code that opens this instrument"
        viewBox={`0 0 ${code.size} ${code.size}`}
      >
        <path d={code.d} />
      </svg>
      <figcaption>{opens[reachOf(base)]}</figcaption>
    </figure>
  );
}

/** Each fits on one line under the code. */
const opens: Readonly<Record<Reach, string>> = {
  anyone: "opens this instrument",
  network: "opens on your network",
  device: "opens on this device",
};

interface Code {
  readonly size: number;
  readonly d: string;
}

/** Modules across, margin included, that still print a quarter of a millimetre wide on the 34 mm the sheet has. */
const mostModules = 136;

/** A code's dark modules, a row's neighbours run together; null where the text is too long for the room. */
function codeOf(text: string): Code | null {
  try {
    const { data, size } = encode(text, { ecc: "L", border: 4 });
    return size > mostModules ? null : { size, d: data.map(rowPath).join("") };
  } catch {
    return null;
  }
}

function rowPath(row: readonly boolean[], y: number): string {
  let d = "";
  for (let x = 0; x < row.length; x++) {
    let run = 0;
    while (row[x + run] === true) run++;
    if (run > 0) d += `M${x} ${y}h${run}v1h-${run}z`;
    x += run;
  }
  return d;
}
