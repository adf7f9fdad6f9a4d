/** Where the holders of loops are in the drawing, and how large the drawing is. */
import type { WorkedMove } from "../schema/answers";
import type { Point } from "./band_outline";
import { boxOf, type Box } from "./view";

const FREE_END = /^([a-z][a-z0-9-]*)\.(\d+)$/;
/** Loops of a free end that are drawn one beyond the other; those after them lie too far out to be told apart. */
const MOST_DRAWN = 4;

/** The peg at which each free end is bound, of all that the piece will have: its name and the peg. */
export function endFeet(moves: readonly WorkedMove[]): Map<string, string> {
  const feet = new Map<string, string>();
  for (const { events } of moves)
    for (const event of events) {
      if (event.type !== "laid") continue;
      const [end, foot] = event.seats.map(([, holder]) => holder as string);
      const name = end && FREE_END.exec(end);
      if (name && name[2] === "0" && foot) feet.set(name[1]!, foot);
    }
  return feet;
}

/** The least distance between two of the first pegs, in mm: 40 where there is no smaller one. */
export function leastGap(pegs: readonly { x: number; y: number }[]): number {
  let least = 40;
  for (const [i, one] of pegs.slice(0, 60).entries())
    for (const other of pegs.slice(0, i)) {
      const apart = Math.hypot(one.x - other.x, one.y - other.y);
      if (apart > 0.1) least = Math.min(least, apart);
    }
  return least;
}

/** Where a holder is: a peg, between two pegs (slid on), a loop of a free end, beside a peg. A free end hangs
 * outward, away from the middle of the loom. */
export function spotOfHolder(holder: string, places: ReadonlyMap<string, Point>, feet: ReadonlyMap<string, string>): Point | null {
  if (holder.startsWith("~")) return places.get(holder.slice(1)) ?? null;
  const peg = places.get(holder);
  if (peg) return peg;
  const [a, b] = holder.split(">").map((each) => places.get(each));
  if (a && b) return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const end = FREE_END.exec(holder);
  if (!end || Number(end[2]) > MOST_DRAWN) return null;
  const foot = places.get(feet.get(end[1]!) ?? "");
  if (!foot) return null;
  const length = Math.hypot(...foot) || 1;
  const far = 8 + 6 * Number(end[2]);
  return [foot[0] + (foot[0] / length) * far, foot[1] + (foot[1] / length) * far];
}

/** The drawing's box: all pegs, and all free ends to their last drawn loop. */
export function loomBox(places: ReadonlyMap<string, Point>, moves: readonly WorkedMove[]): Box {
  const feet = endFeet(moves);
  const ends = new Set<string>();
  for (const { events } of moves)
    for (const event of events) if (event.type === "laid") for (const [, holder] of event.seats) if (FREE_END.test(holder as string)) ends.add(holder as string);
  const far = [...ends].map((holder) => spotOfHolder(holder, places, feet)).filter((spot) => spot !== null);
  return boxOf([...places.values(), ...far], 14);
}
