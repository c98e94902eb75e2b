import { useMemo } from "react";
import type { Instrument } from "../../instrument/instrument.ts";
import type { StickPlan } from "../../profile/sticks/stick-plan.ts";
import type { SetStick } from "../../profile/sticks/stick-set.ts";
import type { StickWants } from "../../profile/sticks/wanted-stick.ts";
import type { StickPlanJob } from "../../worker/messages.ts";
import { nameOf } from "../find-names.ts";
import { useRimwright } from "../store-context.ts";
import { useJob } from "../use-job.ts";
import { useSame } from "../use-same.ts";
import { lengthSaid } from "./change-said.ts";
import type { StickRow } from "./stick-columns.ts";

interface Props {
  /** Those ticked, once all are known. */
  readonly rows: readonly StickRow[];
  readonly ownsSome: boolean;
  readonly onTry: (thickness: number) => void;
}

/** Which stick to add, and the fewest sticks that serve all. */
export function WhichSticks({ rows, ownsSome, onTry }: Props) {
  // The same while a stick is dragged, which changes nothing of what they want.
  const wants = useSame(
    rows.flatMap((row): readonly StickWants[] => (row.wants ? [row.wants] : [])),
  );
  const areKnown = wants.length === rows.length;
  const job = useMemo(
    (): StickPlanJob | null => (areKnown ? { kind: "stick-plan", wants } : null),
    [areKnown, wants],
  );
  const { progress, shown, state } = useJob<"stick-plan">(job);
  const instruments = useMemo(() => rows.map(({ instrument }) => instrument), [rows]);
  const plan = shown === job ? (progress?.answer ?? null) : null;
  return (
    <section
      className="which-sticks"
      aria-labelledby="which-sticks"
      aria-busy={plan === null && state !== "failed"}
    >
      <h2 id="which-sticks">Which sticks for the instruments ticked</h2>
      {state === "failed" && (
        <p className="stick-note">This could not be worked out in this browser.</p>
      )}
      {rows.length === 0 ? (
        <p className="stick-note">No instrument is ticked.</p>
      ) : plan === null ? (
        <p className="stick-note">…</p>
      ) : (
        <Plan {...{ plan, instruments, ownsSome, onTry }} />
      )}
    </section>
  );
}

interface PlanProps {
  readonly plan: StickPlan;
  readonly instruments: readonly Instrument[];
  readonly ownsSome: boolean;
  readonly onTry: (thickness: number) => void;
}

function Plan({ plan, instruments, ownsSome, onTry }: PlanProps) {
  const { fewest, best, oneMore, without } = plan;
  const some = best.filter((set, i) => set.length === i + 1 && i + 1 < fewest.length);
  return (
    <>
      {ownsSome && (
        <>
          <h3>One stick more</h3>
          {oneMore === null ? (
            <p>Every instrument that a stick can serve is served by one you own.</p>
          ) : (
            <SetList sticks={[oneMore]} {...{ instruments, onTry }} />
          )}
        </>
      )}
      {some.map((set) => (
        <div key={set.length}>
          <h3>
            {set.length === 1 ? "The one stick that serves" : `The ${set.length} sticks that serve`}{" "}
            the most: {served(set)} of {instruments.length}
          </h3>
          <SetList sticks={set} {...{ instruments, onTry }} />
        </div>
      ))}
      <h3>
        {fewest.length === 1
          ? "One stick serves"
          : `The fewest for all: ${fewest.length} sticks serve`}{" "}
        {served(fewest)} of {instruments.length}
      </h3>
      <SetList sticks={fewest.slice(0, mostListed)} {...{ instruments, onTry }} />
      {fewest.length > mostListed && <p>and {fewest.length - mostListed} more.</p>}
      <ul className="stick-without">
        {without["none-serves"] > 0 && (
          <li>
            {counted(without["none-serves"])} served by no stick: {its(without["none-serves"])}{" "}
            windows do not go together.
          </li>
        )}
        {without["no-stick"] > 0 && (
          <li>
            {counted(without["no-stick"])} made without a stick, with a seat on the glued top.
          </li>
        )}
        {without["no-plan"] > 0 && <li>{counted(without["no-plan"])} without a plan.</li>}
      </ul>
    </>
  );
}

const mostListed = 12;

const served = (set: readonly SetStick[]): number =>
  set.reduce((sum, { members }) => sum + members.length, 0);

const counted = (count: number): string => (count === 1 ? "1 is" : `${count} are`);
const its = (count: number): string => (count === 1 ? "its" : "their");

interface SetProps {
  readonly sticks: readonly SetStick[];
  readonly instruments: readonly Instrument[];
  readonly onTry: (thickness: number) => void;
}

/** Sticks with whom each serves, how exact it must be, and who sets that. */
function SetList({ sticks, instruments, onTry }: SetProps) {
  const units = useRimwright((state) => state.choices.units);
  const called = (i: number): string => {
    const one = instruments[i];
    return one === undefined ? "none" : nameOf(one.name);
  };
  return (
    <ul className="stick-set">
      {sticks.map(({ thickness, room, members, limits: [low, high] }) => (
        <li key={thickness}>
          <button type="button" onClick={() => onTry(thickness)}>
            Try {lengthSaid(thickness, units)}
          </button>
          <span>
            serves {members.length}, give or take {lengthSaid(room, units)}: {called(low)} takes no
            thinner, {called(high)} no thicker.
          </span>
        </li>
      ))}
    </ul>
  );
}
