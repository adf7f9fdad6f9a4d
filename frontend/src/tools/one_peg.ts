/** Moves made at one peg: bind the last band, tie or clip the loops.
 *
 * A last band goes through all loops of the peg that is pressed; with Shift it waits to be told the lowest of them. */
import type { ToolAnswer, Gesture } from "./gesture";

export type OnePegWay = "bind" | "knot" | "clip";

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

/** A clip closes a free end with the peg pressed where there is one (`end`); else the peg alone. A last band leaves its
 * two ends under the name `newEnd`. */
export function workOnePeg(
  state: OnePegState,
  gesture: Gesture,
  way: OnePegWay,
  band: { colour: string; end: string | null; newEnd: string },
): ToolAnswer<OnePegState> {
  if (gesture.kind === "cancel") return { state: NO_PEG };
  if (gesture.kind === "done" && state.at.length)
    return { state: NO_PEG, move: { do: way === "knot" ? "knot" : "clip", at: state.at } };
  const bound = { do: "bind", colour: band.colour, ...(band.newEnd === "end" ? {} : { end: band.newEnd }) } as const;
  if (gesture.kind === "catch" && way === "bind")
    return { state: NO_PEG, move: { ...bound, at: gesture.peg, ...(gesture.loops === null ? {} : { catch: gesture.loops }) } };
  if (gesture.kind !== "press") return { state };
  const peg = gesture.peg;
  if (isFreeEnd(peg)) {
    if (way !== "clip" && way !== "knot") return { state };
    const name = endName(peg);
    return { state: { at: state.at.includes(name) ? state.at : [...state.at, name] } }; // and now the peg that it is closed with
  }
  if (way === "bind") return gesture.more ? { state: NO_PEG } : { state: NO_PEG, move: { ...bound, at: peg } };
  if (gesture.more) return { state: { at: state.at.includes(peg) ? state.at : [...state.at, peg] } };
  const at = [...(band.end && !state.at.length ? [band.end] : []), ...state.at, peg];
  return { state: NO_PEG, move: { do: way, at } };
}
