import fc from "fast-check";
import { expect, test } from "vitest";
import { fitInto, fitOf, fitTwoPoints, lieOf, placeOf, pointAt, type Spot } from "./fit_picture";

const spot = fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }));
const near = (a: Spot, b: Spot) => expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(1e-6);

test("two points lie where they belong, and every other one keeps its distances", () => {
  fc.assert(
    fc.property(spot, spot, spot, spot, spot, (a, b, atA, atB, c) => {
      const fit = fitTwoPoints(a, b, atA, atB);
      if (!fit) return expect(Math.hypot(a[0] - b[0], a[1] - b[1]) < 1 || Math.hypot(atA[0] - atB[0], atA[1] - atB[1]) < 0.5).toBe(true);
      near(placeOf(fit, a), atA);
      near(placeOf(fit, b), atB);
      near(pointAt(fit, placeOf(fit, c)), c);
      const scale = Math.hypot(atB[0] - atA[0], atB[1] - atA[1]) / Math.hypot(b[0] - a[0], b[1] - a[1]);
      const [p, q] = [placeOf(fit, a), placeOf(fit, c)];
      expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeCloseTo(scale * Math.hypot(a[0] - c[0], a[1] - c[1]), 5);
    }),
  );
});

test("a picture lies upright within the loom at first, and its lie in numbers is that lie", () => {
  const fit = fitInto(400, 200, { left: 0, bottom: 10, width: 100, height: 100 });
  near(placeOf(fit, [0, 0]), [0, 85]);
  near(placeOf(fit, [400, 200]), [100, 35]);
  const lie = lieOf(fit, 400, 200);
  expect([lie.width_mm, lie.x_mm, lie.y_mm, lie.turn]).toEqual([100, 50, 60, 0]);
  const turned = fitOf({ ...lie, turn: 90 }, 400, 200);
  near(placeOf(turned, [400, 100]), [50, 110]); // its right edge is away from the maker
  near(placeOf(fitOf(lie, 400, 200), [7, 9]), placeOf(fit, [7, 9]));
});
