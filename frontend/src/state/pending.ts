/** Moves that were just made, as they will come back from the server, so that the steps show them at once. */
import type { Move } from "../document/pattern";
import type { WorkedMove } from "../schema/answers";
import { bench } from "./bench.svelte";

/** The moves of the piece at hand; those not answered for yet stand at the end, where they were made at the end. */
export function pendingMoves(): readonly WorkedMove[] {
  const made = bench.work.moves ?? [];
  if (!bench.pending.length || bench.moment < made.length) return made;
  const bands = bench.work.colours?.length ?? 0;
  const step = made.at(-1)?.step ?? 0;
  return [...made, ...bench.pending.map((move, k) => likeWorked(move, step + k + 1, bands + k + 1, made.at(-1)?.phase ?? "place"))];
}

function likeWorked(move: Move, step: number, band: number, phase: WorkedMove["phase"]): WorkedMove {
  const events: WorkedMove["events"] = [];
  if (move.do === "place" || move.do === "wind") {
    const over = move.do === "place" ? move.over : [move.on];
    events.push({ type: "laid", band, seats: over.map((at, i) => [[band, i], at, 1]), twists: [] } as never);
  } else if (move.do === "hook" || move.do === "slide") events.push({ type: "drawn", bight: [0, 0], source: move.from, target: move.to, through: [] } as never);
  else if (move.do === "transfer") events.push({ type: "moved", bight: [0, 0], source: move.from, target: move.to } as never);
  else if (move.do === "lift") events.push({ type: "lifted", bight: [0, 0], holder: move.at } as never);
  return { step, path: "", do: move.do, phase, line: "", events } as WorkedMove;
}
