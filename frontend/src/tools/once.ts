/** Moves made at one peg: lift a loop over those above it, bind the last band, tie or clip the loops. */
import type { Answer, Gesture } from "./gesture";

export type OneWay = "lift" | "bind" | "knot" | "clip";

export interface Once {
  /** For a clip: the holders it has taken in so far. */
  at: string[];
}

export const ONCE_IDLE: Once = { at: [] };

/** A clip closes a free end with the peg pressed where there is one (`end`); else the peg alone. */
export function once(
  state: Once,
  gesture: Gesture,
  way: OneWay,
  band: { colour: string; loop: number; end: string | null },
): Answer<Once> {
  if (gesture.kind === "cancel") return { state: ONCE_IDLE };
  if (gesture.kind === "done" && state.at.length)
    return { state: ONCE_IDLE, move: { do: way === "knot" ? "knot" : "clip", at: state.at } };
  if (gesture.kind !== "press") return { state };
  const peg = gesture.peg;
  if (way === "lift")
    return { state: ONCE_IDLE, move: { do: "lift", at: peg, ...(band.loop === 1 ? {} : { loop: band.loop }) } };
  if (way === "bind") return { state: ONCE_IDLE, move: { do: "bind", colour: band.colour, at: peg } };
  if (gesture.more) return { state: { at: state.at.includes(peg) ? state.at : [...state.at, peg] } };
  const at = [...(band.end && !state.at.length ? [band.end] : []), ...state.at, peg];
  return { state: ONCE_IDLE, move: { do: way, at } };
}
