import { type ReactNode, useId } from "react";
import "./choice.css";

interface Props {
  readonly label: string;
  readonly children: (id: string) => ReactNode;
}

/** A control under its name. */
export function Labelled({ label, children }: Props) {
  const id = useId();
  return (
    <div className="choice">
      <label htmlFor={id}>{label}</label>
      {children(id)}
    </div>
  );
}
