/** Where every loop lies after so many moves: the stacks of the pegs, and the trail of each loop.
 *
 * The moves are not judged here, only followed: what happened is what the loom's events say. */
import type { LoomEvent, WorkedMove } from "../schema/answers";

export type Loop = readonly [band: number, index: number];
export const BESIDE = "~";

export interface LoopPositions {
  /** Loops by holder, bottom first. */
  stacks: Map<string, Loop[]>;
  /** For each loop (by `keyOf`) the holders it has been on, the present one last; `~A1` is beside A1. */
  trails: Map<string, string[]>;
  /** For each band the holders it was laid over, one entry a loop, and its half-twists. */
  laid: Map<number, { seats: { loop: Loop; holder: string }[]; twists: readonly number[]; move: number }>;
  /** For each loop that was worked, the move (from 0) that put it where it is. */
  when: Map<string, number>;
  fastened: { kind: string; holders: readonly string[]; move: number }[];
  turned: boolean;
}

export function keyOf(loop: Loop): string {
  return `${loop[0]}.${loop[1]}`;
}

export function emptyPositions(): LoopPositions {
  return { stacks: new Map(), trails: new Map(), laid: new Map(), when: new Map(), fastened: [], turned: false };
}

/** Where a loop (counted from the bottom of its stack) usually goes: to the other peg of its band, as long as it has
 * not been carried yet (common practice, no source). Null where there is none, or more than one. */
export function usualTarget(positions: LoopPositions, peg: string, number: number): string | null {
  const loop = positions.stacks.get(peg)?.[number - 1];
  const laid = loop && positions.laid.get(loop[0]);
  if (!laid || trailOf(positions, loop).length !== 1) return null;
  const others = new Set(laid.seats.map(({ holder }) => holder).filter((holder) => holder !== peg));
  const [other] = others;
  return others.size === 1 && other && /^[A-Z]/.test(other) && !other.includes(">") ? other : null;
}

/** Follow the first `count` moves. */
export function positionsAfter(moves: readonly WorkedMove[], count: number): LoopPositions {
  const positions = emptyPositions();
  for (let k = 0; k < Math.min(count, moves.length); k++) for (const event of moves[k]!.events) applyEvent(positions, event, k);
  return positions;
}

function applyEvent(positions: LoopPositions, event: LoomEvent, move: number): void {
  switch (event.type) {
    case "laid": {
      const seats = event.seats.map(([bight, holder]) => ({ loop: bight as Loop, holder: holder as string }));
      for (const { loop, holder } of seats) {
        const stack = stackOf(positions, holder);
        if (event.beneath) stack.unshift(loop);
        else stack.push(loop);
        positions.trails.set(keyOf(loop), [holder]);
      }
      positions.laid.set(event.band, { seats, twists: event.twists, move });
      break;
    }
    case "drawn": {
      const loop = event.bight as Loop;
      removeLoop(positions, event.source, loop);
      if (event.target.includes(".")) {
        const left = [...(event.skipped ?? [])].reverse() as Loop[]; // those that a last band does not go through
        if (left.length) positions.stacks.set(event.source, left);
        else positions.stacks.delete(event.source);
      }
      stackOf(positions, event.target).push(loop);
      // A free end that is put on a peg leaves nothing behind where it hung.
      const put = event.source.includes(".") && !event.target.includes(".");
      setTrail(positions, loop, [...trailOf(positions, loop).slice(0, put ? -1 : undefined), event.target], move);
      for (const hung of (event.slid ?? []) as readonly Loop[]) {
        removeLoop(positions, "hook", hung);
        setTrail(positions, hung, [`${event.source}>${event.target}`], move);
      }
      break;
    }
    case "moved": {
      const loop = event.bight as Loop;
      removeLoop(positions, event.source, loop);
      stackOf(positions, event.target).push(loop);
      setTrail(positions, loop, [...trailOf(positions, loop).slice(0, -1), event.target], move);
      break;
    }
    case "lifted": {
      const loop = event.bight as Loop;
      removeLoop(positions, event.holder, loop);
      setTrail(positions, loop, [...trailOf(positions, loop).slice(0, -1), BESIDE + event.holder], move);
      break;
    }
    case "fastened":
      for (const loop of event.caught as readonly Loop[]) for (const holder of event.holders) removeLoop(positions, holder, loop);
      positions.fastened.push({ kind: event.kind, holders: event.holders, move });
      break;
    case "turned":
      positions.turned = !positions.turned;
  }
}

function stackOf(positions: LoopPositions, holder: string): Loop[] {
  let stack = positions.stacks.get(holder);
  if (!stack) positions.stacks.set(holder, (stack = []));
  return stack;
}

function trailOf(positions: LoopPositions, loop: Loop): string[] {
  return positions.trails.get(keyOf(loop)) ?? [];
}

function setTrail(positions: LoopPositions, loop: Loop, trail: string[], move: number): void {
  positions.trails.set(keyOf(loop), trail);
  positions.when.set(keyOf(loop), move);
}

function removeLoop(positions: LoopPositions, holder: string, loop: Loop): void {
  const stack = positions.stacks.get(holder);
  if (!stack) return;
  const kept = stack.filter(([band, index]) => band !== loop[0] || index !== loop[1]);
  if (kept.length) positions.stacks.set(holder, kept);
  else positions.stacks.delete(holder);
}
