/** Where the moment that is shown stands: on the loom, and among the document's steps. */
import { origins, type Origin } from "../document/edits";
import { emptyPositions, positionsAfter, type LoopPositions } from "../kernels/loop_positions";
import type { WorkedMove } from "../schema/answers";
import { bench, LAST_MOMENT } from "./bench.svelte";

const NOTHING_LAID = emptyPositions();
/** The moments that were asked for last: several views ask for the same one, and an undo goes back to the one before. */
let known: readonly { moves: readonly WorkedMove[]; count: number; positions: LoopPositions }[] = [];
const MOST_KNOWN = 4;

/** Where every loop is at the moment shown. */
export function positionsNow(): LoopPositions {
  const { moves } = bench.work;
  const count = bench.shownMoves;
  if (!moves) return NOTHING_LAID;
  const before = known.find((each) => each.moves === moves && each.count === count);
  if (before) return before.positions;
  const positions = positionsAfter(moves, count);
  known = [{ moves, count, positions }, ...known.slice(0, MOST_KNOWN - 1)];
  return positions;
}

/** Where a move (its number from 1) comes from in the document that was worked. */
export function originOf(step: number): Origin | null {
  return bench.workedDoc ? (origins(bench.workedDoc)[step - 1] ?? null) : null;
}

/** The place among the document's steps where a new one goes: after the moment shown. */
export function insertionIndex(): number {
  const moves = bench.work.moves ?? [];
  if (!bench.doc) return 0;
  if (bench.moment >= moves.length) return bench.doc.steps.length;
  const before = moves[bench.moment - 1];
  const origin = before ? originOf(before.step) : null;
  return origin ? origin.index + 1 : 0;
}

/** The moment after the step that stands at `insertionIndex`, and `count` moves more. At the end it is the end, however
 * many moves the server has not answered for yet. */
export function momentAfter(count: number): number {
  const moves = bench.work.moves ?? [];
  if (bench.moment >= moves.length) return LAST_MOMENT;
  const index = insertionIndex();
  if (!bench.workedDoc) return count;
  const all = origins(bench.workedDoc);
  let done = 0;
  for (const move of moves) if ((all[move.step - 1]?.index ?? 0) < index) done++;
  return done + count;
}
