import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tilesOver } from "./tiles";

const box = fc.record({
  left: fc.integer({ min: -200, max: 200 }),
  top: fc.integer({ min: -200, max: 200 }),
  width: fc.integer({ min: 1, max: 500 }),
  height: fc.integer({ min: 1, max: 500 }),
});

describe("the tiles of a large picture", () => {
  test("cover all of the board that is in sight, each once, and nothing far from it", () => {
    fc.assert(
      fc.property(box, box, fc.integer({ min: 10, max: 90 }), fc.integer({ min: 0, max: 120 }), (board, sight, side, margin) => {
        const tiles = tilesOver(board, sight, side, margin);
        expect(new Set(tiles.map((tile) => tile.key)).size).toBe(tiles.length);
        const holds = (x: number, y: number, seen: boolean) =>
          tiles.filter((t) => (!seen || t.inSight) && x >= t.left && x < t.left + t.width && y >= t.top && y < t.top + t.height).length;
        for (let x = board.left + 0.5; x < board.left + board.width; x += 7)
          for (let y = board.top + 0.5; y < board.top + board.height; y += 7) {
            const apart = (room: number) =>
              x >= sight.left - room && x < sight.left + sight.width + room && y >= sight.top - room && y < sight.top + sight.height + room;
            if (apart(0)) expect(holds(x, y, true)).toBe(1);
            if (apart(margin)) expect(holds(x, y, false)).toBe(1);
            if (!apart(margin + side)) expect(holds(x, y, false)).toBe(0);
          }
      }),
      { numRuns: 60 },
    );
  });

  test("the nearest to the middle of what is in sight come first", () => {
    const tiles = tilesOver({ left: 0, top: 0, width: 1000, height: 1000 }, { left: 400, top: 400, width: 200, height: 200 }, 100, 300);
    expect(tiles.slice(0, 4).every((tile) => tile.inSight)).toBe(true);
    expect(tiles.at(-1)!.inSight).toBe(false);
    expect(tiles).toHaveLength(64);
  });
});
