/** Lay a band: from peg to peg by a drag, or by pressing one peg and then the other.
 *
 * A drag takes in every peg on its way. Pressing with Shift adds a peg and waits for more; Enter ends it.
 * Pressing the same peg twice winds a cap round it. As a chain, every leg of the way is a band of its own, and
 * pegs that stand in line between two that were pressed are taken in. */
import { parseAddress, printAddress } from "../document/address";
import type { Move } from "../document/pattern";
import type { ToolAnswer, Gesture } from "./gesture";

export interface LayState {
  over: string[];
  /** The hand is down: pegs that it enters are added. */
  dragging: boolean;
  /** The hand went to another peg since it was put down. */
  went: boolean;
}

export interface BandChoice {
  colour: string;
  /** How often it goes round each peg that it is laid over. */
  turns: number;
  /** How often a cap is wound round its peg. */
  capTurns: number;
  twists: number;
  chain: boolean;
}

export const NOTHING_LAID: LayState = { over: [], dragging: false, went: false };

export function layBand(state: LayState, gesture: Gesture, band: BandChoice): ToolAnswer<LayState> {
  switch (gesture.kind) {
    case "press": {
      if (state.over.length === 1 && state.over[0] === gesture.peg && !gesture.more)
        return { state: NOTHING_LAID, move: { do: "wind", colour: band.colour, on: gesture.peg, turns: band.capTurns } };
      if (state.over.includes(gesture.peg)) return { state };
      const over = [...state.over, gesture.peg];
      if (state.over.length && !gesture.more) return finishLaying({ ...state, over }, band);
      return { state: { over, dragging: true, went: false } };
    }
    case "enter":
      if (!state.dragging || state.over.includes(gesture.peg)) return { state };
      return { state: { over: [...state.over, gesture.peg], dragging: true, went: true } };
    case "release":
      if (!state.dragging) return { state };
      if (state.went) return finishLaying(state, band);
      return { state: { ...state, dragging: false } };
    case "done":
      return finishLaying(state, band);
    case "cancel":
      return { state: NOTHING_LAID };
    default:
      return { state };
  }
}

function finishLaying(state: LayState, band: BandChoice): ToolAnswer<LayState> {
  if (state.over.length < 2) return { state: NOTHING_LAID };
  if (!band.chain) return { state: NOTHING_LAID, move: placeOver(state.over, band) };
  const way = state.over.flatMap((peg, k) => (k ? pegsInLine(state.over[k - 1]!, peg) : [peg]));
  return { state: NOTHING_LAID, moves: way.slice(1).map((peg, k) => placeOver([way[k]!, peg], band)) };
}

function placeOver(over: string[], band: BandChoice): Move {
  return {
    do: "place",
    colour: band.colour,
    over,
    ...(band.turns > 1 ? { turns: over.map(() => band.turns) } : {}),
    ...(band.twists > 0 ? { twists: over.slice(1).map(() => band.twists) } : {}),
  };
}

/** The pegs on the way from one to another, without the first: those between them where both stand in one row, or
 * have one number. */
export function pegsInLine(from: string, to: string): string[] {
  const [a, b] = [parseAddress(from), parseAddress(to)];
  if (!a || !b || (a.row !== b.row && a.number !== b.number)) return [to];
  const [rows, pegs] = [b.row - a.row, b.number - a.number];
  const count = Math.max(Math.abs(rows), Math.abs(pegs));
  return Array.from({ length: count }, (_, k) => {
    const on = k + 1;
    return printAddress({ row: a.row + Math.sign(rows) * on, number: a.number + Math.sign(pegs) * on })!;
  });
}
