import { contactOf, type Givens } from "../../profile/givens.ts";

/** What is marked across rim and top besides the saddle line, mm from the tail: break and stick, or the seat's end. */
export function markedPlaces(givens: Givens): { readonly name: string; readonly x: number }[] {
  const { seat, breakX, instrument } = givens;
  return seat === null
    ? [
        { name: "stick's edge", x: contactOf(instrument) },
        { name: "break", x: breakX },
      ]
    : [{ name: "seat's end", x: seat.fromX }];
}
