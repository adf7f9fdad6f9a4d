/** Carry a loop from one peg to another: hook it, slide on to it what hangs on the hook, transfer it, or lift it over.
 *
 * Press the peg it is on (the lowest loop is taken, or the one chosen in the stack), then the peg it goes to. The
 * same peg once more sends it where such a loop usually goes. A loop that is lifted goes off its peg at once, unless
 * it is dragged to another, or pressed with Shift: then it waits for the peg that it goes on. A free end is put on a
 * peg by `transfer`; with Shift on several, which share its loops. */
import type { ToolAnswer, Gesture } from "./gesture";
import { endName, isFreeEnd } from "./one_peg";

export type CarryWay = "hook" | "slide" | "transfer" | "lift";

export interface CarryState {
  from: string | null;
  loop: number;
  /** How many of the loops above it the hook goes down inside; null is all of them. */
  through: number | null;
  /** The pegs that a free end goes on, so far. */
  to: readonly string[];
  /** A loop that is lifted waits for the peg that it goes on. */
  waits: boolean;
  dragging: boolean;
}

export const NOTHING_CARRIED: CarryState = { from: null, loop: 1, through: null, to: [], waits: false, dragging: false };

/** `loops` says how many loops a peg carries; a bare peg gives nothing to take. `usual` is where the loop that is taken
 * usually goes; null where nobody can say. */
export function carryLoop(
  state: CarryState,
  gesture: Gesture,
  way: CarryWay,
  loops: (peg: string) => number,
  usual: string | null = null,
): ToolAnswer<CarryState> {
  switch (gesture.kind) {
    case "press":
      if (state.from === null)
        return loops(gesture.peg) || way === "lift" // a quick hand lifts before the server has answered
          ? { state: { ...NOTHING_CARRIED, from: gesture.peg, waits: gesture.more === true, dragging: true } }
          : { state: NOTHING_CARRIED };
      if (way === "lift" && gesture.peg === state.from) return liftLoop(state, null);
      if (gesture.more && isFreeEnd(state.from) && !isFreeEnd(gesture.peg)) return { state: { ...state, to: withPeg(state.to, gesture.peg) } };
      return carryTo(state, gesture.peg === state.from ? (usual ?? state.from) : gesture.peg, way);
    case "release":
      if (!state.dragging) return { state };
      if (gesture.peg && gesture.peg !== state.from) return carryTo(state, gesture.peg, way);
      if (way === "lift" && !state.waits) return gesture.peg ? liftLoop(state, null) : { state: NOTHING_CARRIED };
      return { state: { ...state, dragging: false } };
    case "done":
      return state.from && state.to.length ? putEnd(state.from, state.to) : { state };
    case "loop":
      return { state: state.from === null ? state : { ...state, loop: gesture.loop, through: null } };
    case "through":
      return { state: state.from === null ? state : { ...state, through: gesture.loops } };
    case "cancel":
      return { state: NOTHING_CARRIED };
    default:
      return { state };
  }
}

function carryTo(state: CarryState, target: string, way: CarryWay): ToolAnswer<CarryState> {
  if (state.from === null || target === state.from) return { state: NOTHING_CARRIED };
  if (isFreeEnd(state.from)) {
    if (way !== "transfer" || isFreeEnd(target)) return { state: NOTHING_CARRIED };
    return putEnd(state.from, withPeg(state.to, target));
  }
  if (way === "lift") return liftLoop(state, target);
  const ways = { from: state.from, to: target };
  if (way === "transfer") return { state: NOTHING_CARRIED, move: { do: "transfer", ...ways } };
  const which = {
    ...(state.loop === 1 ? {} : { loop: state.loop }),
    ...(state.through === null ? {} : { through: state.through }),
  };
  return { state: NOTHING_CARRIED, move: { do: way, ...ways, ...which } };
}

function liftLoop(state: CarryState, to: string | null): ToolAnswer<CarryState> {
  if (state.from === null || isFreeEnd(state.from) || (to && isFreeEnd(to))) return { state: NOTHING_CARRIED };
  return { state: NOTHING_CARRIED, move: { do: "lift", at: state.from, ...(state.loop === 1 ? {} : { loop: state.loop }), ...(to ? { to } : {}) } };
}

function putEnd(end: string, on: readonly string[]): ToolAnswer<CarryState> {
  const name = endName(end);
  return { state: NOTHING_CARRIED, move: { do: "put", on: [...on], ...(name === "end" ? {} : { end: name }) } };
}

function withPeg(pegs: readonly string[], peg: string): readonly string[] {
  return pegs.includes(peg) ? pegs : [...pegs, peg];
}
