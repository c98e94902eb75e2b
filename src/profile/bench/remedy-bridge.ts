import { mm, phrase } from "../../instrument/phrase.ts";
import type { MadeInstrument } from "./made-instrument.ts";
import { barred, type RemedyMaker, remedied } from "./remedy.ts";

/** Usual thickness of a bridge, mm; from memory. */
const usualBridge = [8, 9.5] as const;

/** A thinner bridge leaves more of the saddle to see; the strings stay where they are. */
export const bridgeThickness: RemedyMaker = ({ made, goal, stage }, raise) => {
  const id = "bridge";
  if (goal === "stringHeight")
    return barred(id, phrase`The strings' height over the top does not depend on the bridge.`);
  if (stage.strung) return barred(id, phrase`The strings are on.`);
  if (stage.bridgeMade && raise < 0)
    return barred(id, phrase`The bridge is made: it can be planed thinner, not thicker.`);
  const value = made.instrument.bridge.thickness - raise;
  if (value <= 0) return barred(id, phrase`Nothing of the bridge would be left.`);
  const by = mm(Math.abs(raise));
  const [low, high] = usualBridge;
  return remedied({
    id,
    raise,
    amount: Math.abs(raise),
    instruction:
      raise > 0
        ? phrase`Plane the bridge ${by} thinner, to ${mm(value)}.`
        : phrase`Make the bridge ${by} thicker, ${mm(value)}.`,
    also: [
      raise > 0
        ? phrase`The saddle's slot is ${by} shallower: deepen it.`
        : phrase`The saddle's slot is ${by} deeper.`,
      ...(value < low || value > high
        ? [phrase`That is out of the usual ${mm(low)} to ${mm(high)}.`]
        : []),
    ],
    changes: [{ path: "bridge.thickness", value }],
  });
};

/** Change of action at fret 12 for a change at the saddle: half, but for the compensation. */
export function actionFor({ instrument }: MadeInstrument, atSaddle: number): number {
  const { neck, bridge } = instrument;
  return (atSaddle * (neck.scale / 2)) / (neck.scale + bridge.compensation);
}

/** A taller or lower saddle: the action at fret 12 follows by half. */
export const saddle: RemedyMaker = ({ made, goal }, raise) => {
  const id = "saddle";
  if (goal === "bridgeClearance")
    return barred(id, phrase`The saddle does not move the fret plane.`);
  const change = actionFor(made, raise);
  const { actionBass, actionTreble } = made.instrument.strings;
  const [bass, treble] = [actionBass + change, actionTreble + change];
  if (Math.min(bass, treble) <= 0) return barred(id, phrase`The strings would lie on the frets.`);
  const changes = [
    { path: "strings.actionBass", value: bass },
    { path: "strings.actionTreble", value: treble },
  ] as const;
  const exposed = made.heights.saddleExposure + raise;
  const by = mm(Math.abs(raise));
  return remedied({
    id,
    raise,
    amount: Math.abs(raise),
    instruction:
      raise > 0 ? phrase`Make the saddle ${by} taller.` : phrase`Take ${by} off the saddle.`,
    also: [
      phrase`The action at fret 12 becomes ${mm(bass)} on the bass side and ${mm(treble)} on the treble side: half the change at the saddle.`,
      ...(exposed < 0 ? [phrase`Nothing of the saddle would stand over the bridge.`] : []),
    ],
    changes: [...changes],
  });
};
