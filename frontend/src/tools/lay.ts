/** Lay a band: from peg to peg by a drag, or by pressing one peg and then the other.
 *
 * A drag takes in every peg on its way. Pressing with Shift adds a peg and waits for more; Enter ends it.
 * Pressing the same peg twice winds a cap round it. */
import type { Answer, Gesture } from "./gesture";

export interface Lay {
  over: string[];
  /** The hand is down: pegs that it enters are added. */
  dragging: boolean;
  /** The hand went to another peg since it was put down. */
  went: boolean;
}

export interface LayWith {
  colour: string;
  turns: number;
  twists: number;
}

export const LAY_IDLE: Lay = { over: [], dragging: false, went: false };

export function lay(state: Lay, gesture: Gesture, band: LayWith): Answer<Lay> {
  switch (gesture.kind) {
    case "press": {
      if (state.over.length === 1 && state.over[0] === gesture.peg && !gesture.more)
        return { state: LAY_IDLE, move: { do: "wind", colour: band.colour, on: gesture.peg, turns: band.turns > 1 ? band.turns : 3 } };
      if (state.over.includes(gesture.peg)) return { state };
      const over = [...state.over, gesture.peg];
      if (state.over.length && !gesture.more) return done({ ...state, over }, band);
      return { state: { over, dragging: true, went: false } };
    }
    case "enter":
      if (!state.dragging || state.over.includes(gesture.peg)) return { state };
      return { state: { over: [...state.over, gesture.peg], dragging: true, went: true } };
    case "release":
      if (!state.dragging) return { state };
      if (state.went) return done(state, band);
      return { state: { ...state, dragging: false } };
    case "done":
      return done(state, band);
    case "cancel":
      return { state: LAY_IDLE };
    default:
      return { state };
  }
}

function done(state: Lay, band: LayWith): Answer<Lay> {
  if (state.over.length < 2) return { state: LAY_IDLE };
  const move = { do: "place" as const, colour: band.colour, over: state.over };
  return {
    state: LAY_IDLE,
    move: {
      ...move,
      ...(band.turns > 1 ? { turns: state.over.map(() => band.turns) } : {}),
      ...(band.twists > 0 ? { twists: state.over.slice(1).map(() => band.twists) } : {}),
    },
  };
}
