/** Carry a loop from one peg to another: hook it, slide on to it what hangs on the hook, or transfer it.
 *
 * Press the peg it is on (the lowest loop is taken, or the one chosen in the stack), then the peg it goes to. */
import type { Answer, Gesture } from "./gesture";

export type Way = "hook" | "slide" | "transfer";

export interface Carry {
  from: string | null;
  loop: number;
  dragging: boolean;
}

export const CARRY_IDLE: Carry = { from: null, loop: 1, dragging: false };

/** `loops` says how many loops a peg carries; a bare peg gives nothing to take. */
export function carry(state: Carry, gesture: Gesture, way: Way, loops: (peg: string) => number): Answer<Carry> {
  switch (gesture.kind) {
    case "press":
      if (state.from === null)
        return { state: loops(gesture.peg) ? { from: gesture.peg, loop: 1, dragging: true } : CARRY_IDLE };
      return to(state, gesture.peg, way);
    case "release":
      if (!state.dragging) return { state };
      if (gesture.peg && gesture.peg !== state.from) return to(state, gesture.peg, way);
      return { state: { ...state, dragging: false } };
    case "loop":
      return { state: state.from === null ? state : { ...state, loop: gesture.loop } };
    case "cancel":
      return { state: CARRY_IDLE };
    default:
      return { state };
  }
}

function to(state: Carry, target: string, way: Way): Answer<Carry> {
  if (state.from === null || target === state.from) return { state: CARRY_IDLE };
  const ways = { from: state.from, to: target };
  if (way === "transfer") return { state: CARRY_IDLE, move: { do: "transfer", ...ways } };
  const which = state.loop === 1 ? {} : { loop: state.loop };
  return { state: CARRY_IDLE, move: { do: way, ...ways, ...which } };
}
