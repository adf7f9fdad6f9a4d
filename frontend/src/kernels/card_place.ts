/** Where a card about a peg goes: off the board where there is room for it in sight, else into the corner of what is in
 * sight that lies farthest from the peg. A loop goes to a peg near its own, and those stay free. */
import type { Point } from "./band_outline";
import type { Box } from "./view";

const GAP = 10;

export interface CardSetting {
  /** The peg that the card speaks of. */
  peg: Point;
  card: { width: number; height: number };
  board: { width: number; height: number };
  sight: Box;
  leftFirst: boolean;
}

/** The card's left upper corner; all in px from the board's corner. */
export function placeCard({ peg: [x, y], card: { width, height }, board, sight, leftFirst }: CardSetting): Point {
  const [right, bottom] = [sight.left + sight.width, sight.top + sight.height];
  const low = Math.max(sight.left, Math.min(x - width / 2, right - width));
  const top = Math.max(sight.top, Math.min(y - height / 2, bottom - height));
  const beside: Point[] = [
    [board.width + GAP, top],
    [-width - GAP, top],
  ];
  if (leftFirst) beside.reverse();
  const off: Point[] = [...beside, [low, board.height + GAP], [low, -height - GAP]];
  const free = off.find(([a, b]) => a >= sight.left && b >= sight.top && a + width <= right && b + height <= bottom);
  if (free) return free;
  const [inner, outer] = [
    [sight.left + GAP, right - width - GAP],
    [sight.top + GAP, bottom - height - GAP],
  ] as const;
  const corners = inner.flatMap((a) => outer.map((b): Point => [a, b]));
  const apart = ([a, b]: Point) => Math.hypot(a + width / 2 - x, b + height / 2 - y);
  return corners.reduce((best, corner) => (apart(corner) > apart(best) ? corner : best));
}
