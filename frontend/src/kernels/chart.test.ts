import { expect, test } from "vitest";
import type { WorkedMove } from "../schema/answers";
import { marksOf, paperTiles, phasesOf, printedRuns } from "./chart";

const move = (step: number, phase: string, rounds: object[] = [], events: object[] = []) => ({ step, phase, rounds, events, do: "hook" }) as unknown as WorkedMove;

test("phases follow each other; turning round is none of them", () => {
  const moves = ["place", "place", "turn", "work", "finish"].map((phase, i) => move(i + 1, phase));
  expect(phasesOf(moves)).toEqual([
    { phase: "place", start: 0, length: 2 },
    { phase: "work", start: 3, length: 1 },
    { phase: "finish", start: 4, length: 1 },
  ]);
});

test("the rounds of a repeat are printed once, with how often", () => {
  const rounds = (round: number) => [{ path: "/steps/0", round, of: 3 }];
  const moves = [1, 2, 3].flatMap((round) => [move(2 * round - 1, "place", rounds(round)), move(2 * round, "place", rounds(round))]);
  const runs = printedRuns([...moves, move(7, "finish")]);
  expect(runs.map(({ times, moves }) => [times, moves.map(({ step }) => step)])).toEqual([[[3], [1, 2]], [[], [7]]]);
});

test("tiles cover the drawing and are no larger than the paper", () => {
  const box = { left: -10, top: 5, width: 700, height: 100 };
  const tiles = paperTiles(box, 240, 170);
  expect(tiles).toHaveLength(3);
  expect(tiles.reduce((sum, tile) => sum + tile.width * tile.height, 0)).toBeCloseTo(box.width * box.height);
  for (const tile of tiles) expect(tile.width <= 240 && tile.height <= 170).toBe(true);
});

test("a loop that is hooked is an arrow, a clip stands at its pegs", () => {
  const spots: Record<string, readonly [number, number]> = { A1: [0, 0], A2: [0, 16] };
  const spotOf = (holder: string) => spots[holder] ?? null;
  expect(marksOf(move(4, "work", [], [{ type: "drawn", bight: [1, 0], source: "A2", target: "A1" }]), spotOf)).toEqual([{ step: 4, from: [0, 16], to: [0, 0] }]);
  expect(marksOf(move(9, "finish", [], [{ type: "fastened", kind: "clip", holders: ["A1", "end.0"], caught: [] }]), spotOf)).toEqual([{ step: 9, at: [0, 0] }]);
});
