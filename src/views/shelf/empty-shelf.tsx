import { demoShelf } from "../../instrument/record-demo.ts";
import type { Session } from "../../store/session.ts";
import { newEntry } from "../../store/shelf-entry.ts";
import { workOn } from "../../store/state.ts";

interface Props {
  readonly session: Session;
  readonly act: (doing: Promise<unknown>) => Promise<void>;
}

/** What a builder sees before anything is kept: how things come here, and something to look at. */
export function EmptyShelf({ session, act }: Props) {
  const { shelf, tell, now } = session.parts;
  const load = async (): Promise<void> => {
    const invented = demoShelf.map(({ instrument, asBuilt }) => ({
      entry: newEntry({ ...workOn(instrument), asBuilt }, now()),
      over: null,
    }));
    for (const one of await shelf.take(invented)) tell(one);
  };
  return (
    <div className="shelf-empty">
      <p>
        Nothing is on the shelf yet. The open instrument comes here with its first change, and is
        saved by itself from then on. To keep it unchanged, press Keep above.
      </p>
      <p>
        To look round first, put {demoShelf.length} invented instruments here. Nobody built them,
        and each says so in its name; take them off when you have seen enough.
      </p>
      <button type="button" onClick={() => void act(load())}>
        Put the invented ones on the shelf
      </button>
    </div>
  );
}
