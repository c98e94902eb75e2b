import { Component, type ReactNode, useState } from "react";
import type { Instrument } from "../instrument/instrument.ts";
import { useRimwright } from "./store-context.ts";

interface Props {
  /** What stands inside, as the message names it: "The drawing". */
  readonly what: string;
  readonly children: ReactNode;
}

/** Keeps a part that fails from taking the page with it. The numbers stay, and it is tried again when they change. */
export function ErrorBoundary({ what, children }: Props) {
  const instrument = useRimwright((state) => state.instrument);
  return (
    <Boundary instrument={instrument} instead={<Failure what={what} instrument={instrument} />}>
      {children}
    </Boundary>
  );
}

interface BoundaryProps {
  readonly instrument: Instrument;
  readonly instead: ReactNode;
  readonly children: ReactNode;
}

interface BoundaryState {
  readonly failed: boolean;
  readonly instrument: Instrument;
}

class Boundary extends Component<BoundaryProps, BoundaryState> {
  override state: BoundaryState = { failed: false, instrument: this.props.instrument };

  static getDerivedStateFromError(): Partial<BoundaryState> {
    return { failed: true };
  }

  static getDerivedStateFromProps(
    { instrument }: BoundaryProps,
    before: BoundaryState,
  ): Partial<BoundaryState> | null {
    return instrument === before.instrument ? null : { failed: false, instrument };
  }

  override render(): ReactNode {
    return this.state.failed ? this.props.instead : this.props.children;
  }
}

function Failure({ what, instrument }: { what: string; instrument: Instrument }) {
  const [copied, setCopied] = useState<"no" | "yes" | "shown">("no");
  const text = JSON.stringify(instrument, null, 2);
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setCopied("yes");
    } catch {
      setCopied("shown");
    }
  };
  return (
    <div className="failure" role="alert">
      <p>
        {what} failed on these numbers. That is a fault of Rimwright, not yours. Every number you
        typed is still here; it is tried again as soon as one changes.
      </p>
      <button type="button" onClick={copy}>
        {copied === "yes" ? "Copied" : "Copy the instrument as JSON"}
      </button>
      {copied === "shown" && (
        <textarea readOnly aria-label="The instrument as JSON" rows={6} value={text} />
      )}
    </div>
  );
}
