/** The tiles of a large picture: which are wanted for what is in sight. Lengths are mm in the drawing. */
import type { Box } from "./view";

export interface Tile extends Box {
  key: string;
  /** Whether some of it is in sight; the others lie ready round about. */
  inSight: boolean;
}

/** The tiles of `side` that touch what is in sight, or lie within `margin` of it, the nearest to its middle first. */
export function tilesOver(board: Box, sight: Box, side: number, margin: number): Tile[] {
  const [columns, rows] = [Math.ceil(board.width / side), Math.ceil(board.height / side)];
  const within = (low: number, high: number, count: number): [number, number] => [
    Math.max(0, Math.floor(low / side)),
    Math.min(count, Math.ceil(high / side)),
  ];
  const [x, y] = [sight.left - board.left, sight.top - board.top];
  const [left, right] = within(x - margin, x + sight.width + margin, columns);
  const [top, bottom] = within(y - margin, y + sight.height + margin, rows);
  const [near, far] = [within(x, x + sight.width, columns), within(y, y + sight.height, rows)];
  const tiles: Tile[] = [];
  for (let row = top; row < bottom; row++)
    for (let column = left; column < right; column++)
      tiles.push({
        key: `${column} ${row}`,
        left: board.left + column * side,
        top: board.top + row * side,
        width: side,
        height: side,
        inSight: column >= near[0] && column < near[1] && row >= far[0] && row < far[1],
      });
  const [cx, cy] = [sight.left + sight.width / 2, sight.top + sight.height / 2];
  const apart = (tile: Tile) => Math.hypot(tile.left + side / 2 - cx, tile.top + side / 2 - cy);
  return tiles.sort((a, b) => apart(a) - apart(b));
}
