import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CASES } from "../cases";
import { bandOutline, hull, type Point } from "./band_outline";
import { inkOn } from "./hatch";
import { emptyPositions, keyOf, positionsAfter } from "./loop_positions";
import { bandAt, bandLines } from "./band_lines";
import { neighbour, toDrawing } from "./view";

describe("where loops lie", () => {
  it.each(CASES.pieces)("the stacks are Python's after every move: $name", ({ seen, stacks }) => {
    for (let k = 0; k < seen.length; k++) {
      const mine = Object.fromEntries([...positionsAfter(seen, k + 1).stacks].filter(([, loops]) => loops.length));
      expect(mine).toStrictEqual(stacks[k]);
    }
  });

  it.each(CASES.pieces)("every loop on a peg ends its trail there: $name", ({ seen }) => {
    const positions = positionsAfter(seen, seen.length);
    for (const [holder, loops] of positions.stacks)
      for (const loop of loops) expect(positions.trails.get(keyOf(loop))!.at(-1)).toBe(holder);
  });

  it("nothing lies on an empty loom", () => {
    expect(bandLines(emptyPositions(), () => [0, 0], { peg_mm: 5, base_mm: 3, rise_mm: 1 })).toStrictEqual([]);
  });
});

const point = fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })) as fc.Arbitrary<Point>;

describe("the line of a band", () => {
  it("is the convex hull: every point inside, no turn to the right", () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 30 }), (points) => {
        const line = hull(points);
        if (line.length < 3) return;
        line.forEach((a, i) => {
          const b = line[(i + 1) % line.length]!;
          for (const p of points)
            expect((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])).toBeGreaterThanOrEqual(-1e-9);
        });
      }),
    );
  });

  it("has the length of a belt round two equal pulleys, 2d + 2πr", () => {
    const line = bandOutline([
      { x: 0, y: 0, r: 3 },
      { x: 16, y: 0, r: 3 },
    ]);
    const length = line.reduce((sum, a, i) => {
      const b = line[(i + 1) % line.length]!;
      return sum + Math.hypot(a[0] - b[0], a[1] - b[1]);
    }, 0);
    expect(Math.abs(length / (2 * 16 + 2 * Math.PI * 3) - 1)).toBeLessThan(0.01);
  });
});

describe("pointing at a band", () => {
  const seen = CASES.pieces.find((piece) => piece.name === "lobster-pot")!.seen;
  const positions = positionsAfter(seen, 1);
  const spots = new Map([...positions.stacks.keys()].map((holder, i) => [holder, [16 * i, 0] as Point]));
  const parts = bandLines(positions, (holder) => spots.get(holder) ?? null, { peg_mm: 5, base_mm: 3.5, rise_mm: 1 });

  it("takes it on its line and nowhere else", () => {
    expect(bandAt(parts, [8, 3.5], 1)).toBe(1);
    expect(bandAt(parts, [8, 4.4], 1)).toBe(1);
    expect(bandAt(parts, [8, 0], 1)).toBeNull();
    expect(bandAt(parts, [8, 5], 1)).toBeNull();
  });
});

describe("the maker's view", () => {
  it("turned twice is as it was, and no way of looking changes a distance", () => {
    fc.assert(
      fc.property(point, point, fc.boolean(), fc.boolean(), (a, b, turned, across) => {
        const [p, q] = [toDrawing(a, { turned, across }), toDrawing(b, { turned, across })];
        expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeCloseTo(Math.hypot(a[0] - b[0], a[1] - b[1]));
        const other = toDrawing(a, { turned: !turned, across });
        expect([other[0] + p[0], other[1] + p[1]].map((n) => n + 0)).toStrictEqual([0, 0]);
      }),
    );
  });

  it("is no mirror image: left of the maker stays left", () => {
    for (const turned of [false, true])
      for (const across of [false, true]) {
        const view = { turned, across };
        const [x, y] = [toDrawing([1, 0], view), toDrawing([0, 1], view)];
        expect(x[0] * y[1] - x[1] * y[0]).toBe(-1); // y points down in the drawing
      }
  });

  it("arrow keys lead from peg to peg and back", () => {
    const pegs = Array.from({ length: 12 }, (_, i) => ({ at: `${i}`, x: (i % 3) * 14, y: Math.floor(i / 3) * 16 }));
    for (const peg of pegs)
      for (const way of [[1, 0], [0, 1]] as Point[]) {
        const next = neighbour(pegs, peg, way);
        if (next) expect(neighbour(pegs, next, [-way[0], -way[1]])).toBe(peg);
      }
  });
});

describe("ink", () => {
  it("shows on any tint: at least 3 : 1 (WCAG 2.2, 1.4.11)", () => {
    const luminance = (hex: string) =>
      [0.2126, 0.7152, 0.0722].reduce((sum, weight, k) => {
        const v = parseInt(hex.slice(1 + 2 * k, 3 + 2 * k), 16) / 255;
        return sum + weight * (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
      }, 0);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (n) => {
        const tint = `#${n.toString(16).padStart(6, "0")}`;
        const [a, b] = [luminance(tint), luminance(inkOn(tint))].sort((p, q) => q - p) as [number, number];
        expect((a + 0.05) / (b + 0.05)).toBeGreaterThanOrEqual(3);
      }),
    );
  });
});
