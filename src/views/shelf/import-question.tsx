import { type Clash, type ClashChoice, choose, type ImportPlan } from "../../store/shelf/import.ts";
import { Select } from "../fields/select.tsx";
import { nameOf } from "../find-names.ts";

interface Props {
  readonly plan: ImportPlan;
  readonly onChange: (plan: ImportPlan) => void;
  readonly onImport: () => void;
  readonly onLeave: () => void;
}

/** Clashes asked about one by one; more are settled together. */
const mostAsked = 50;

const choices: readonly (readonly [ClashChoice, string])[] = [
  ["both", "keep both"],
  ["replace", "replace the shelf’s"],
  ["skip", "leave the file’s out"],
];

/** Asks what is to become of instruments that the shelf has under the same id with other content. */
export function ImportQuestion({ plan, onChange, onImport, onLeave }: Props) {
  const { clashes, fresh, same, bad } = plan;
  const first = clashes[0]?.choice;
  const common = clashes.every(({ choice }) => choice === first) ? first : undefined;
  return (
    <section className="shelf-question" aria-labelledby="shelf-question">
      <h3 id="shelf-question">
        {clashes.length === 1
          ? "One instrument is on the shelf already, and differs"
          : `${clashes.length} instruments are on the shelf already, and differ`}
      </h3>
      <p>
        Nothing is written yet. {fresh.length} more are new here, {same} are the same,{" "}
        {bad.length === 0 ? "none" : "some"} cannot be read. What is replaced stays one undo away.
      </p>
      {clashes.length > 1 && (
        <Choice
          label="All of them"
          choice={common}
          onChoose={(choice) => onChange(choose(plan, null, choice))}
        />
      )}
      <ul className="shelf-clashes">
        {clashes.slice(0, mostAsked).map((clash) => (
          <li key={clash.path}>
            <Choice
              label={sentenceOf(clash)}
              choice={clash.choice}
              onChoose={(choice) => onChange(choose(plan, clash.path, choice))}
            />
          </li>
        ))}
      </ul>
      {clashes.length > mostAsked && <p>and {clashes.length - mostAsked} more.</p>}
      <div className="shelf-line">
        <button type="button" onClick={onImport}>
          Import them
        </button>
        <button type="button" onClick={onLeave}>
          Leave the whole file out
        </button>
      </div>
    </section>
  );
}

const sentenceOf = ({ document, kept, differs }: Clash): string =>
  `${nameOf(document.instrument.name)}, on the shelf as ${nameOf(kept.name)}: other ${differs.join(", ")}`;

interface ChoiceProps {
  readonly label: string;
  readonly choice: ClashChoice | undefined;
  readonly onChoose: (choice: ClashChoice) => void;
}

const Choice = ({ label, choice, onChoose }: ChoiceProps) => (
  <Select
    label={<bdi>{label}</bdi>}
    value={choice ?? null}
    ask="as chosen below"
    options={choices}
    onChoose={onChoose}
  />
);
