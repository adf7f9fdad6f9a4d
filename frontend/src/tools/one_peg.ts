/** Moves made at one peg: lift a loop over those above it, bind the last band, tie or clip the loops. */
import type { ToolAnswer, Gesture } from "./gesture";

export type OnePegWay = "lift" | "bind" | "knot" | "clip";

export interface OnePegState {
  /** For a clip: the holders it has taken in so far. */
  at: string[];
}

/** A free end is a holder such as `tail.0`: its name, and the loop of it. */
export function isFreeEnd(holder: string): boolean {
  return /^[a-z][a-z0-9-]*\.\d+$/.test(holder);
}

export function endName(holder: string): string {
  return holder.slice(0, holder.lastIndexOf("."));
}

export const NO_PEG: OnePegState = { at: [] };

/** A clip closes a free end with the peg pressed where there is one (`end`); else the peg alone. */
export function workOnePeg(
  state: OnePegState,
  gesture: Gesture,
  way: OnePegWay,
  band: { colour: string; loop: number; end: string | null },
): ToolAnswer<OnePegState> {
  if (gesture.kind === "cancel") return { state: NO_PEG };
  if (gesture.kind === "done" && state.at.length)
    return { state: NO_PEG, move: { do: way === "knot" ? "knot" : "clip", at: state.at } };
  if (gesture.kind !== "press") return { state };
  const peg = gesture.peg;
  if (isFreeEnd(peg)) {
    if (way !== "clip" && way !== "knot") return { state };
    const name = endName(peg);
    return { state: { at: state.at.includes(name) ? state.at : [...state.at, name] } }; // and now the peg that it is closed with
  }
  if (way === "lift")
    return { state: NO_PEG, move: { do: "lift", at: peg, ...(band.loop === 1 ? {} : { loop: band.loop }) } };
  if (way === "bind") return { state: NO_PEG, move: { do: "bind", colour: band.colour, at: peg } };
  if (gesture.more) return { state: { at: state.at.includes(peg) ? state.at : [...state.at, peg] } };
  const at = [...(band.end && !state.at.length ? [band.end] : []), ...state.at, peg];
  return { state: NO_PEG, move: { do: way, at } };
}
