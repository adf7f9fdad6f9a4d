/** The maker's view: plan (mm, x right, y away) to drawing (mm, x right, y down).
 *
 * Turned, the plan is seen from its other end. Across, the whole drawing is laid on its side so that a long
 * loom fits a wide screen: the maker then sits at the left, or for the left hand at the right. */
import type { Point } from "./band_outline";

export interface View {
  turned: boolean;
  across: boolean;
  /** Laid on its side for the left hand: the maker sits at the right. */
  left?: boolean;
}

export interface Box {
  left: number;
  top: number;
  width: number;
  height: number;
}

export function toDrawing([x, y]: Point, view: View): Point {
  const sign = view.turned ? -1 : 1;
  if (!view.across) return [sign * x, -sign * y];
  return view.left ? [-sign * y, -sign * x] : [sign * y, sign * x];
}

/** The place in the plan of a spot in the drawing: every view, seen once more in the same way, is the plan again. */
export const toPlan = toDrawing;

/** The direction in the drawing (degrees clockwise from the right) of a direction in the plan. */
export function drawnAngle(deg: number, view: View): number {
  const angle = (deg * Math.PI) / 180;
  const [dx, dy] = toDrawing([Math.cos(angle), Math.sin(angle)], view);
  return (Math.atan2(dy, dx) * 180) / Math.PI;
}

/** The smallest box round the spots, with room about them. */
export function boxOf(spots: readonly Point[], room: number): Box {
  if (!spots.length) return { left: -room, top: -room, width: 2 * room, height: 2 * room };
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of spots) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left: left - room, top: top - room, width: right - left + 2 * room, height: bottom - top + 2 * room };
}

/** The middle of the smallest box round the spots. */
export function middleOf(spots: readonly Point[]): Point {
  const box = boxOf(spots, 0);
  return [box.left + box.width / 2, box.top + box.height / 2];
}

/** The peg that the maker reaches next from a peg by an arrow key: the nearest within 50° of that way. */
export function neighbour<T extends { at: string; x: number; y: number }>(
  pegs: readonly T[],
  from: T,
  way: Point,
): T | null {
  let best: T | null = null;
  let least = Infinity;
  for (const peg of pegs) {
    const [dx, dy] = [peg.x - from.x, peg.y - from.y];
    const along = dx * way[0] + dy * way[1];
    const aside = Math.abs(dx * way[1] - dy * way[0]);
    if (along <= 0.1 || aside > along * 1.2) continue;
    const cost = along + 1.6 * aside;
    if (cost < least) [best, least] = [peg, cost];
  }
  return best;
}
