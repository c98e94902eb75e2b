import { useId, useState } from "react";
import { dayWanted, firstDay, isDay, lastDay } from "../../instrument/as-built/day.ts";

interface Props {
  /** The part of the label that is shown. */
  readonly shown: string;
  readonly label: string;
  readonly day: string;
  readonly onDay: (day: string) => void;
}

/** A day. What the field shows when it is left is what is kept; while it shows no whole day, nothing is, and it says so. */
export function DayEntry({ shown, label, day, onDay }: Props) {
  const faultId = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [left, setLeft] = useState(false);
  const fault = left && typed !== null && !isDay(typed) ? dayWanted : "";
  return (
    <label>
      {shown}
      <input
        type="date"
        required
        min={firstDay}
        max={lastDay}
        aria-label={label}
        aria-invalid={fault !== ""}
        aria-describedby={faultId}
        value={typed ?? day}
        onChange={({ target: { value } }) => {
          setTyped(value);
          if (isDay(value)) onDay(value);
        }}
        onFocus={() => setLeft(false)}
        onBlur={() => {
          setLeft(true);
          if (typed !== null && isDay(typed)) setTyped(null);
        }}
      />
      <span id={faultId} className="entry-fault" role="status">
        {fault}
      </span>
    </label>
  );
}
