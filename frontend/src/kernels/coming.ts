/** Bands that are on their way: those that the hand is laying, and those laid that the line has not answered for yet. */
import type { Point } from "./band_outline";
import { outlineRound, type Measures } from "./band_lines";
import type { Loop } from "./loop_positions";
import type { BandLook, Coming } from "./paint";

export interface BandToCome {
  over: readonly string[];
  colour: string;
  chosen: boolean;
  /** It would be laid by what the hand is about to do. */
  ghost: boolean;
}

/** A move as far as it lays a band. */
type Laying = { do: string; over?: readonly string[] | string; on?: string | readonly string[]; colour?: string };

export function bandsOf(moves: readonly Laying[], ghost: boolean): BandToCome[] {
  return moves.flatMap(({ do: what, over, on, colour = "" }) =>
    what === "place" && Array.isArray(over) ? [{ over: over as readonly string[], colour, chosen: false, ghost }] : what === "wind" && typeof on === "string" ? [{ over: [on], colour, chosen: false, ghost }] : [],
  );
}

/** Where it lies: on top of what is on its pegs. */
export function comingLine(
  { over, colour, chosen, ghost }: BandToCome,
  on: { places: ReadonlyMap<string, Point>; stacks: ReadonlyMap<string, readonly Loop[]>; measures: Measures; lookOf: (letter: string) => BandLook },
): Coming {
  const discs = over.flatMap((at) => {
    const place = on.places.get(at);
    const level = on.stacks.get(at)?.length ?? 0;
    return place ? [{ x: place[0], y: place[1], r: on.measures.base_mm + level * on.measures.rise_mm }] : [];
  });
  return { ...outlineRound(discs), look: on.lookOf(colour), chosen, ghost };
}
