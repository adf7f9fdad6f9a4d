import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heat } from "./heat";
import { tube } from "./tube";
import { bendRound, flatOf, wornRadius } from "./wrist";

/** A ring of n points in a tilted plane, pushed about by at most `by`. */
const ring = fc
  .tuple(fc.integer({ min: 5, max: 40 }), fc.double({ min: 2, max: 20, noNaN: true }), fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 120, maxLength: 120 }))
  .map(([n, r, noise]) =>
    Array.from({ length: n }, (_, i) => {
      const a = (2 * Math.PI * i) / n;
      return [r * Math.cos(a) + noise[3 * i]!, r * Math.sin(a) + noise[3 * i + 1]!, 0.5 * r * Math.sin(a) + noise[3 * i + 2]!];
    }).flat(),
  );

describe("the skin of a strand", () => {
  it("runs through the points, and every corner lies one radius from the middle of its ring", () => {
    fc.assert(
      fc.property(ring, fc.boolean(), (points, closed) => {
        const made = tube(points, closed, 0.75, 6, 2);
        const rings = made.along.length;
        expect(made.positions.length).toBe(rings * 6 * 3);
        let worst = 0;
        for (let i = 0; i < rings; i++) {
          const middle = [0, 1, 2].map((a) => {
            let sum = 0;
            for (let k = 0; k < 6; k++) sum += made.positions[(i * 6 + k) * 3 + a]!;
            return sum / 6;
          });
          if (Number.isInteger(made.along[i]))
            for (let a = 0; a < 3; a++) worst = Math.max(worst, Math.abs(middle[a]! - points[3 * made.along[i]! + a]!));
          for (let k = 0; k < 6; k++) {
            const out = [0, 1, 2].map((a) => made.positions[(i * 6 + k) * 3 + a]! - middle[a]!);
            worst = Math.max(worst, Math.abs(Math.hypot(...out) - 0.75));
            for (let a = 0; a < 3; a++) worst = Math.max(worst, Math.abs(made.normals[(i * 6 + k) * 3 + a]! - out[a]! / 0.75));
          }
        }
        expect(worst).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });

  it("is closed: every edge of a closed strand's triangles belongs to two, once each way", () => {
    fc.assert(
      fc.property(ring, (points) => {
        const { index } = tube(points, true, 0.75, 5, 2);
        const ways = new Set<string>();
        for (let i = 0; i < index.length; i += 3)
          for (let k = 0; k < 3; k++) {
            const way = `${index[i + k]} ${index[i + ((k + 1) % 3)]}`;
            ways.add(way);
          }
        expect(ways.size).toBe(index.length);
        expect([...ways].filter((way) => !ways.has(way.split(" ").reverse().join(" ")))).toStrictEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it("looks outward: the volume inside its triangles is positive, and that of a torus (Pappus)", () => {
    const n = 200;
    const points = Array.from({ length: n }, (_, i) => [10 * Math.cos((2 * Math.PI * i) / n), 10 * Math.sin((2 * Math.PI * i) / n), 0]).flat();
    const { positions, index } = tube(points, true, 1, 64, 1);
    let six = 0;
    for (let i = 0; i < index.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => [0, 1, 2].map((x) => positions[3 * index[i + k]! + x]!)) as [number[], number[], number[]];
      six += a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) + a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) + a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
    }
    expect(six / 6).toBeGreaterThan(0.99 * 2 * Math.PI ** 2 * 10);
    expect(six / 6).toBeLessThan(2 * Math.PI ** 2 * 10);
  });
});

describe("a piece round a wrist", () => {
  it("its ends meet, nothing lies in the wrist, and a strand along it is as long as its circle", () => {
    fc.assert(
      fc.property(fc.double({ min: 50, max: 300, noNaN: true }), fc.double({ min: 120, max: 200, noNaN: true }), (length, girth) => {
        const n = 400;
        const line = Array.from({ length: n + 1 }, (_, i) => [-length / 2 + (i * length) / n, 3, 0]).flat();
        const flat = flatOf([line]);
        const worn = bendRound(line, flat, girth, 0.75);
        for (let a = 0; a < 3; a++) expect(worn.at(a - 3)).toBeCloseTo(worn[a]!, 6);
        let along = 0;
        for (let i = 0; i < n; i++) along += Math.hypot(worn[3 * i + 3]! - worn[3 * i]!, worn[3 * i + 4]! - worn[3 * i + 1]!, worn[3 * i + 5]! - worn[3 * i + 2]!);
        expect(along).toBeCloseTo(2 * Math.PI * (wornRadius(flat, girth) + 0.75), 0);
        const nearest = Math.min(...Array.from({ length: n + 1 }, (_, i) => Math.hypot(worn[3 * i]!, worn[3 * i + 2]!)));
        expect(nearest).toBeGreaterThanOrEqual(girth / (2 * Math.PI));
      }),
    );
  });
});

describe("tension as a tint", () => {
  it("is ever darker the tauter: relative luminance (WCAG 2.2) falls all the way", () => {
    const luminance = (rgb: readonly number[]) => {
      const [r, g, b] = rgb.map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
    };
    for (let k = 0; k < 100; k++) expect(luminance(heat((k + 1) / 100))).toBeLessThan(luminance(heat(k / 100)));
  });
});
