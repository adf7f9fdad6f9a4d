/** Carry a loop from one peg to another: hook it, slide on to it what hangs on the hook, or transfer it.
 *
 * Press the peg it is on (the lowest loop is taken, or the one chosen in the stack), then the peg it goes to. The
 * same peg once more sends it where such a loop usually goes. A free end is put on a peg by `transfer`. */
import type { ToolAnswer, Gesture } from "./gesture";
import { endName, isFreeEnd } from "./one_peg";

export type CarryWay = "hook" | "slide" | "transfer";

export interface CarryState {
  from: string | null;
  loop: number;
  /** How many of the loops above it the hook goes down inside; null is all of them. */
  through: number | null;
  dragging: boolean;
}

export const NOTHING_CARRIED: CarryState = { from: null, loop: 1, through: null, dragging: false };

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
        return { state: loops(gesture.peg) ? { ...NOTHING_CARRIED, from: gesture.peg, dragging: true } : NOTHING_CARRIED };
      return carryTo(state, gesture.peg === state.from ? (usual ?? state.from) : gesture.peg, way);
    case "release":
      if (!state.dragging) return { state };
      if (gesture.peg && gesture.peg !== state.from) return carryTo(state, gesture.peg, way);
      return { state: { ...state, dragging: false } };
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
    const name = endName(state.from);
    if (way !== "transfer" || isFreeEnd(target)) return { state: NOTHING_CARRIED };
    return { state: NOTHING_CARRIED, move: { do: "put", on: [target], ...(name === "end" ? {} : { end: name }) } };
  }
  const ways = { from: state.from, to: target };
  if (way === "transfer") return { state: NOTHING_CARRIED, move: { do: "transfer", ...ways } };
  const which = {
    ...(state.loop === 1 ? {} : { loop: state.loop }),
    ...(state.through === null ? {} : { through: state.through }),
  };
  return { state: NOTHING_CARRIED, move: { do: way, ...ways, ...which } };
}
