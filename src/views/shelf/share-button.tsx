import { useState } from "react";
import { openAddress } from "../../store/files/share.ts";
import type { Shelf } from "../../store/shelf/shelf.ts";
import { copyText } from "../copy-text.ts";
import { useSharedBase } from "../page-address.ts";
import { PublishedAddress } from "../published-address.tsx";

interface Shared {
  readonly address: string;
  readonly copied: boolean;
}

/** Makes the address that opens an instrument of the shelf, copies it where the browser lets it, and says whether. */
export function ShareButton({ shelf, id }: { readonly shelf: Shelf; readonly id: string }) {
  const [shared, setShared] = useState<Shared | null>(null);
  const base = useSharedBase();
  const addressOf = async (): Promise<string> => {
    const document = await shelf.document(id);
    if (document === undefined) throw new Error("It is no longer on the shelf.");
    return openAddress(document.instrument, base);
  };
  const share = async (): Promise<void> => {
    const coming = addressOf();
    const copied = await copyText(coming);
    setShared(await coming.then((address) => ({ address, copied })).catch(() => null));
  };
  return (
    <>
      <button type="button" onClick={() => void share()}>
        Share
      </button>
      {shared !== null && (
        <>
          <label className="shelf-line">
            {shared.copied
              ? "Address that opens it; it is copied"
              : "Address that opens it; this browser does not let the page copy it, so copy it from here"}
            <input readOnly value={shared.address} onFocus={({ target }) => target.select()} />
          </label>
          <PublishedAddress />
        </>
      )}
    </>
  );
}
