import { useEffect, useState } from "react";
import { fetchLate } from "../fetch-late.ts";
import { NotFetched } from "../late-part.tsx";

/** Has a style sheet that did not come, or not whole, fetched again; says so while it is missing. */
export function LookNote() {
  const [missing, setMissing] = useState(false);
  useEffect(() => {
    const first = document.querySelector<HTMLLinkElement>("link[rel=stylesheet]");
    if (first === null || hasLook()) return;
    return fetchLate(() => styledBy(first.href), {
      onPart: () => setMissing(false),
      onFailure: () => setMissing(true),
    });
  }, []);
  return missing ? <NotFetched what="The look of this page" /> : null;
}

/** The style sheet names the page's colours. */
const hasLook = (): boolean =>
  getComputedStyle(document.documentElement).getPropertyValue("--ink") !== "";

/** Adds the style sheet at `address`, past whatever a cache holds for it. */
function styledBy(address: string): Promise<void> {
  const link = document.createElement("link");
  link.rel = "stylesheet";
  link.href = `${address}?again=${Date.now()}`;
  return new Promise((styled, failed) => {
    const look = (): void => {
      if (hasLook()) styled();
      else {
        link.remove();
        failed(new Error("The style sheet is not there."));
      }
    };
    link.addEventListener("load", look);
    link.addEventListener("error", look);
    document.head.append(link);
  });
}
