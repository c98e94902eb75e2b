import { useId } from "react";
import { addressFault, type Reach, reachOf, usePublished } from "./page-address.ts";

const opens: Readonly<Record<Exclude<Reach, "anyone">, string>> = {
  device: "This page’s address opens on this device only",
  network: "This page’s address opens on your own network only",
};

/** Where the page's own address leads nobody else anywhere: says so, and takes that of a published copy. */
export function PublishedAddress() {
  const [text, state] = usePublished();
  const fieldId = useId();
  const reach = reachOf(window.location.href);
  if (reach === "anyone") return null;
  const fault = text === "" ? null : addressFault(text);
  return (
    <div className="published-address">
      <label htmlFor={fieldId}>
        {opens[reach]}, and so do a printed code and a shared address. If you have put Rimwright on
        the web, its address there:
      </label>
      <input
        id={fieldId}
        type="url"
        inputMode="url"
        placeholder="https://…"
        value={text}
        aria-invalid={fault !== null}
        aria-describedby={`${fieldId}-fault`}
        onChange={({ target }) => state(target.value.trim())}
      />
      <span id={`${fieldId}-fault`} className="entry-fault" role="status">
        {fault}
      </span>
    </div>
  );
}
