import { type ReactNode, useId } from "react";
import { addStyles } from "../late-styles.ts";
import styles from "./labelled.css?inline";

addStyles(styles);

interface Props {
  readonly label: ReactNode;
  /** Whether the name is for screen readers only, because what stands round the control says it. */
  readonly unseen?: boolean;
  readonly children: (id: string) => ReactNode;
}

/** A control under its name. */
export function Labelled({ label, unseen = false, children }: Props) {
  const id = useId();
  return (
    <div className="labelled">
      <label htmlFor={id} className={unseen ? "unseen" : undefined}>
        {label}
      </label>
      {children(id)}
    </div>
  );
}
