import type { BrowserContext } from "@playwright/test";

const violationMark = "content security policy violation:";

/** Playwright's own word for what its configuration asks of it; the page has no part in it. */
const blockedByUs = "Service Worker registration blocked by Playwright";

/** What Chromium calls a request it gave up because the page was left, as a reload leaves its icon. */
const givenUp = "net::ERR_ABORTED";

/**
 * Collects what a page must never do: console warnings and errors, uncaught errors, requests that
 * fail or leave the origin, and violations of the content security policy. The list grows as the
 * pages of the context run.
 */
export async function watch(context: BrowserContext, origin: string): Promise<readonly string[]> {
  const faults: string[] = [];
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type()) && message.text() !== blockedByUs) {
      faults.push(`console ${message.type()}: ${message.text()}`);
    }
  });
  context.on("weberror", (fault) => faults.push(`uncaught: ${fault.error().message}`));
  context.on("requestfailed", (request) => {
    const why = request.failure()?.errorText;
    if (why !== givenUp) faults.push(`failed: ${request.url()} ${why}`);
  });
  context.on("request", (request) => {
    const url = new URL(request.url());
    if (url.protocol.startsWith("http") && url.origin !== origin) {
      faults.push(`off the origin: ${url.href}`);
    }
  });
  await context.addInitScript((mark) => {
    document.addEventListener("securitypolicyviolation", (event) => {
      console.error(mark, event.effectiveDirective, event.blockedURI);
    });
  }, violationMark);
  return faults;
}
