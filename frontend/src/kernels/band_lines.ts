/** What is seen of the bands: closed lines in the drawing, the earliest first.
 *
 * A band lies round the pegs it was laid over. A loop that was pulled on leaves a narrow neck at the peg it
 * came from, and a drop from there to the peg it is on. */
import { bandOutline, closedPath, type Disc, type Point } from "./band_outline";
import { keyOf, BESIDE, type LoopPositions, type Loop } from "./loop_positions";

export interface Outline {
  d: string;
  line: readonly Point[];
  /** A spot on the line for a letter, on its longest straight part. */
  mid: Point;
  /** No point of the line is farther from `mid` than this. */
  reach: number;
}

export interface BandLine extends Outline {
  band: number;
  key: string;
  when: number;
}

export interface Measures {
  peg_mm: number;
  base_mm: number;
  rise_mm: number;
}

export type SpotOf = (holder: string) => Point | null;

const known = new Map<string, Outline>();
const MOST_KNOWN = 40_000;

export function bandLines(positions: LoopPositions, spotOf: SpotOf, measures: Measures): BandLine[] {
  const levels = new Map<string, number>();
  for (const stack of positions.stacks.values()) stack.forEach((loop, level) => levels.set(keyOf(loop), level));
  const parts: BandLine[] = [];
  const neck = measures.peg_mm / 2 - 0.3;
  const radius = (loop: Loop) => measures.base_mm + (levels.get(keyOf(loop)) ?? 0) * measures.rise_mm;

  for (const [band, laid] of positions.laid) {
    const discs: Disc[] = [];
    const spots = laid.seats.map(({ loop }) => spotOf(firstHolder(positions.trails.get(keyOf(loop)))));
    const seen = spots.filter((spot) => spot !== null);
    const middle: Point = [mean(seen, 0), mean(seen, 1)];
    laid.seats.forEach(({ loop }, i) => {
      const spot = spots[i];
      const trail = positions.trails.get(keyOf(loop));
      if (!spot || !trail) return;
      const way = unit(middle[0] - spot[0], middle[1] - spot[1]);
      if (trail.length === 1 && trail[0]!.startsWith(BESIDE)) {
        const beside = measures.base_mm + 2.2;
        discs.push({ x: spot[0] + way[0] * beside, y: spot[1] + way[1] * beside, r: 1.3 });
      } else if (trail.length > 1) discs.push({ x: spot[0] + way[0] * neck, y: spot[1] + way[1] * neck, r: 0.8 });
      else discs.push({ x: spot[0], y: spot[1], r: isPegAddress(trail[0]!) ? radius(loop) : 1.7 });
    });
    if (discs.length) parts.push({ band, key: `${band}`, when: laid.move, ...outlineRound(discs) });
    for (const { loop } of laid.seats) {
      const trail = positions.trails.get(keyOf(loop)) ?? [];
      for (let k = 0; k + 1 < trail.length; k++) {
        const [a, b] = [spotOf(trail[k]!), spotOf(trail[k + 1]!)];
        if (!a || !b) continue;
        const way = unit(b[0] - a[0], b[1] - a[1]);
        const last = k + 2 === trail.length;
        const off = trail[k + 1]!.startsWith(BESIDE);
        const head: Disc = !last
          ? { x: b[0] - way[0] * neck, y: b[1] - way[1] * neck, r: 0.8 }
          : off
            ? { x: b[0] - way[0] * (measures.base_mm + 2.2), y: b[1] - way[1] * (measures.base_mm + 2.2), r: 1.3 }
            : { x: b[0], y: b[1], r: isPegAddress(trail[k + 1]!) ? radius(loop) : 1.7 };
        const tip: Disc = { x: a[0] + way[0] * neck, y: a[1] + way[1] * neck, r: 0.8 };
        const when = positions.when.get(keyOf(loop)) ?? laid.move;
        parts.push({ band, key: `${keyOf(loop)}:${k}`, when, ...outlineRound([tip, head]) });
      }
    }
  }
  return parts.sort((a, b) => a.when - b.when);
}

/** The band whose line runs nearest to a spot, within a reach; of several the one that lies on top. */
export function bandAt(parts: readonly BandLine[], [x, y]: Point, reach: number): number | null {
  let best: number | null = null;
  let least = reach;
  for (const { band, line } of parts)
    line.forEach((a, i) => {
      const b = line[(i + 1) % line.length]!;
      const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
      const along = Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
      const apart = Math.hypot(a[0] + along * dx - x, a[1] + along * dy - y);
      if (apart <= least) [best, least] = [band, apart];
    });
  return best;
}

function isPegAddress(holder: string): boolean {
  return /^[A-Z]/.test(holder) && !holder.includes(">");
}

/** The line of a band that lies taut round discs; the same one, as long as it is known, for the same discs. */
export function outlineRound(discs: readonly Disc[]): Outline {
  const name = discs.map(({ x, y, r }) => `${x.toFixed(2)},${y.toFixed(2)},${r.toFixed(2)}`).join(" ");
  let drawn = known.get(name);
  if (!drawn) {
    if (known.size > MOST_KNOWN) known.clear();
    const line = bandOutline(discs);
    const mid = middleOfLongestEdge(line);
    const reach = Math.max(...line.map(([x, y]) => Math.hypot(x - mid[0], y - mid[1])));
    drawn = { d: closedPath(line), line, mid, reach };
    known.set(name, drawn);
  }
  return drawn;
}

function middleOfLongestEdge(line: readonly Point[]): Point {
  let best: Point = line[0] ?? [0, 0];
  let longest = -1;
  line.forEach((a, i) => {
    const b = line[(i + 1) % line.length]!;
    const length = Math.hypot(a[0] - b[0], a[1] - b[1]);
    if (length > longest + 1e-6) [best, longest] = [[(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], length];
  });
  return best;
}

function firstHolder(trail: readonly string[] | undefined): string {
  return trail?.[0]?.replace(BESIDE, "") ?? "";
}

function mean(spots: readonly Point[], axis: 0 | 1): number {
  return spots.length ? spots.reduce((sum, spot) => sum + spot[axis], 0) / spots.length : 0;
}

function unit(x: number, y: number): Point {
  const length = Math.hypot(x, y);
  return length > 1e-9 ? [x / length, y / length] : [0, 1];
}
