import type { Reporter, Suite } from "@playwright/test/reporter";

/** Ends the run with its count on one plain line, for readers of logs. */
export default class ClosingLine implements Reporter {
  private suite: Suite | undefined;

  onBegin(_config: unknown, suite: Suite): void {
    this.suite = suite;
  }

  onEnd(): void {
    const tests = this.suite?.allTests() ?? [];
    const passed = tests.filter((test) => test.outcome() === "expected").length;
    const skipped = tests.filter((test) => test.outcome() === "skipped").length;
    const failed = tests.length - passed - skipped;
    process.stdout.write(
      `\nbrowser: ${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}\n`,
    );
  }
}
