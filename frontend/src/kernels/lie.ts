/** Where every loop lies after so many moves: the stacks of the pegs, and the trail of each loop.
 *
 * The moves are not judged here, only followed: what happened is what the loom's events say. */
import type { LoomEvent, SeenMove } from "../wire/client";

export type Loop = readonly [band: number, index: number];
export const OFF = "~";

export interface Lie {
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

export function emptyLie(): Lie {
  return { stacks: new Map(), trails: new Map(), laid: new Map(), when: new Map(), fastened: [], turned: false };
}

/** Follow the first `count` moves. */
export function lieAfter(moves: readonly SeenMove[], count: number): Lie {
  const lie = emptyLie();
  for (let k = 0; k < Math.min(count, moves.length); k++) for (const event of moves[k]!.events) follow(lie, event, k);
  return lie;
}

function follow(lie: Lie, event: LoomEvent, move: number): void {
  switch (event.type) {
    case "laid": {
      const seats = event.seats.map(([bight, holder]) => ({ loop: bight as Loop, holder: holder as string }));
      for (const { loop, holder } of seats) {
        const stack = stackOf(lie, holder);
        if (event.beneath) stack.unshift(loop);
        else stack.push(loop);
        lie.trails.set(keyOf(loop), [holder]);
      }
      lie.laid.set(event.band, { seats, twists: event.twists, move });
      break;
    }
    case "drawn": {
      const loop = event.bight as Loop;
      take(lie, event.source, loop);
      if (event.target.includes(".")) lie.stacks.delete(event.source);
      stackOf(lie, event.target).push(loop);
      put(lie, loop, [...trailOf(lie, loop), event.target], move);
      for (const hung of (event.slid ?? []) as readonly Loop[]) {
        take(lie, "hook", hung);
        put(lie, hung, [`${event.source}>${event.target}`], move);
      }
      break;
    }
    case "moved": {
      const loop = event.bight as Loop;
      take(lie, event.source, loop);
      stackOf(lie, event.target).push(loop);
      put(lie, loop, [...trailOf(lie, loop).slice(0, -1), event.target], move);
      break;
    }
    case "lifted": {
      const loop = event.bight as Loop;
      take(lie, event.holder, loop);
      put(lie, loop, [...trailOf(lie, loop).slice(0, -1), OFF + event.holder], move);
      break;
    }
    case "fastened":
      for (const loop of event.caught as readonly Loop[]) for (const holder of event.holders) take(lie, holder, loop);
      lie.fastened.push({ kind: event.kind, holders: event.holders, move });
      break;
    case "turned":
      lie.turned = !lie.turned;
  }
}

function stackOf(lie: Lie, holder: string): Loop[] {
  let stack = lie.stacks.get(holder);
  if (!stack) lie.stacks.set(holder, (stack = []));
  return stack;
}

function trailOf(lie: Lie, loop: Loop): string[] {
  return lie.trails.get(keyOf(loop)) ?? [];
}

function put(lie: Lie, loop: Loop, trail: string[], move: number): void {
  lie.trails.set(keyOf(loop), trail);
  lie.when.set(keyOf(loop), move);
}

function take(lie: Lie, holder: string, loop: Loop): void {
  const stack = lie.stacks.get(holder);
  if (!stack) return;
  const kept = stack.filter(([band, index]) => band !== loop[0] || index !== loop[1]);
  if (kept.length) lie.stacks.set(holder, kept);
  else lie.stacks.delete(holder);
}
