/** The chart of a piece, to be printed: what is laid and how it is worked, phase by phase, on the loom as it lies at the start. */
import type { WorkedMove } from "../schema/answers";
import type { Point } from "./band_outline";
import type { Box } from "./view";

/** Moves of one phase that follow each other: the first, counted from 0, and how many. */
export interface Phase {
  phase: WorkedMove["phase"];
  start: number;
  length: number;
}

/** The phases in order; turning the loom round is no picture of its own. */
export function phasesOf(moves: readonly WorkedMove[]): Phase[] {
  const found: Phase[] = [];
  moves.forEach(({ phase }, i) => {
    const last = found.at(-1);
    if (last?.phase === phase) last.length++;
    else found.push({ phase, start: i, length: 1 });
  });
  return found.filter(({ phase }) => phase !== "turn");
}

/** What the hand does at a step: a loop carried from one spot to another, or something done at a spot. */
export type Mark = { step: number; from: Point; to: Point } | { step: number; at: Point };

export function marksOf(move: WorkedMove, spotOf: (holder: string) => Point | null): Mark[] {
  const found: Mark[] = [];
  for (const event of move.events) {
    if (event.type === "drawn" || event.type === "moved") {
      const [from, to] = [spotOf(event.source), spotOf(event.target)];
      if (from && to) found.push({ step: move.step, from, to });
    } else if (event.type === "lifted" || event.type === "fastened") {
      for (const holder of event.type === "lifted" ? [event.holder] : event.holders) {
        const at = spotOf(holder);
        if (at) found.push({ step: move.step, at });
      }
    } else if (event.type === "laid" && move.phase === "finish") {
      const foot = event.seats.map(([, holder]) => spotOf(holder as string)).find((spot) => spot !== null);
      if (foot) found.push({ step: move.step, at: foot });
    }
  }
  const [first] = found;
  return move.do === "extend" && first ? [first] : found; // a chain of many bands is one thing to do
}

/** Cut a drawing into tiles that are read on paper: none wider or higher than that (mm), all alike. */
export function paperTiles(box: Box, widest: number, highest: number): Box[] {
  const across = Math.max(1, Math.ceil(box.width / widest));
  const down = Math.max(1, Math.ceil(box.height / highest));
  const [width, height] = [box.width / across, box.height / down];
  return Array.from({ length: across * down }, (_, k) => ({
    left: box.left + (k % across) * width,
    top: box.top + Math.floor(k / across) * height,
    width,
    height,
  }));
}

/** Steps as they are printed: those of a repeat once, with how often it is done. */
export interface PrintedRun {
  /** How often, for each repeat that it is within; the outermost first. */
  times: readonly number[];
  moves: readonly WorkedMove[];
}

export function printedRuns(moves: readonly WorkedMove[]): PrintedRun[] {
  const found: { key: string; times: number[]; moves: WorkedMove[] }[] = [];
  for (const move of moves) {
    const rounds = move.rounds ?? [];
    if (rounds.some(({ round }) => round > 1)) continue;
    const key = rounds.map(({ path }) => path).join(" ");
    const last = found.at(-1);
    if (last?.key === key) last.moves.push(move);
    else found.push({ key, times: rounds.map(({ of }) => of).filter((of) => of > 1), moves: [move] });
  }
  return found.map(({ times, moves }) => ({ times, moves }));
}
