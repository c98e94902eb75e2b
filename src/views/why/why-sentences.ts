import type { whyPictures } from "../../drawing/why/why-picture.ts";
import type { Instrument } from "../../instrument/instrument.ts";
import { anglePart } from "../../instrument/outcome-fields.ts";
import { deg, mm, type Phrase, phrase } from "../../instrument/phrase.ts";
import { raisedBy } from "../../profile/comparison/part-worth.ts";
import type { Profile } from "../../profile/outcome.ts";

/** The sentence under each picture, on the instrument's own numbers. */
export function whySentence(
  which: (typeof whyPictures)[number],
  instrument: Instrument,
  profile: Profile,
): Phrase {
  const { dome } = instrument;
  const part = anglePart[dome.method];
  switch (which) {
    case "dish":
      if (dome.dishRadius === null) return ["This top has no dome: the whole rim stays flat."];
      return profile.seat === null
        ? phrase`From the tail to the break the rim is sanded in a dish, so that the top becomes part of a sphere of radius ${mm(dome.dishRadius)}.`
        : phrase`The whole rim is sanded in a dish, so that the top becomes part of a sphere of radius ${mm(dome.dishRadius)}, all over.`;
    case "board":
      return profile.seat === null
        ? phrase`A fingerboard must be glued to a flat: the last ${mm(dome.flatLength)} of the rim are sanded flat on a board, with a shim of ${mm(profile.shim)} under the tail.`
        : phrase`A fingerboard must be glued to a flat: its seat is sanded flat on the glued top, under a bar on the neck end and on a spacer of ${mm(profile.seat.spacer)}. That takes ${mm(profile.seat.mostCut)} of the plate where most comes off.`;
    case "angle":
      return [
        `The ${part} tips that flat: it leans `,
        deg(profile.pitch),
        ` to the level rim (dashed). With the ${profile.seat === null ? "break" : "dish"} where it is, nothing else sets that angle.`,
      ];
    case "bridge":
      return profile.bridgeClearance >= 0
        ? phrase`The neck lies along the flat, so the plane of the frets runs on to the bridge, and passes ${mm(profile.bridgeClearance)} over it.`
        : phrase`The neck lies along the flat, so the plane of the frets runs on to the bridge, and points ${mm(-profile.bridgeClearance)} into it.`;
    case "saddle":
      return [...saddleSaid(profile), ...moreSaid(instrument, profile)];
  }
}

const saddleSaid = ({ saddleExposure, stringHeight }: Profile): Phrase =>
  saddleExposure >= 0
    ? phrase`What the strings need above that is the saddle: it stands ${mm(saddleExposure)} out of the bridge, and the strings run ${mm(stringHeight)} over the top.`
    : phrase`The strings would run ${mm(-saddleExposure)} below the bridge's top: there is no room for a saddle.`;

/** What a millimetre more of the shim or spacer would change. */
function moreSaid(instrument: Instrument, profile: Profile): Phrase {
  const raised = raisedBy(instrument, profile, 1);
  if (raised === null) return [];
  return [
    ` A ${anglePart[instrument.dome.method]} `,
    mm(1),
    " thicker (dashed) would raise it by ",
    mm(raised),
    `: once the ${profile.seat === null ? "top" : "fingerboard"} is on, that is past.`,
  ];
}
