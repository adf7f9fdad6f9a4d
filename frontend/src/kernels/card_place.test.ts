import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeCard } from "./card_place";

const px = (min: number, max: number) => fc.integer({ min, max });

describe("the card about a peg", () => {
  it("is wholly in sight wherever there is room for it", () => {
    const setting = fc.record({
      peg: fc.tuple(px(0, 900), px(0, 500)),
      card: fc.record({ width: px(150, 260), height: px(80, 340) }),
      board: fc.record({ width: px(200, 3000), height: px(150, 2000) }),
      sight: fc.record({ left: px(-300, 900), top: px(-300, 600), width: px(290, 1200), height: px(370, 800) }),
      leftFirst: fc.boolean(),
    });
    fc.assert(
      fc.property(setting, (given) => {
        const [left, top] = placeCard(given);
        const { card, sight } = given;
        expect(left).toBeGreaterThanOrEqual(sight.left);
        expect(top).toBeGreaterThanOrEqual(sight.top);
        expect(left + card.width).toBeLessThanOrEqual(sight.left + sight.width);
        expect(top + card.height).toBeLessThanOrEqual(sight.top + sight.height);
      }),
    );
  });

  it("lies off the board where it can, else far from its peg", () => {
    const card = { width: 200, height: 150 };
    const sight = { left: -50, top: -100, width: 900, height: 450 };
    expect(placeCard({ peg: [100, 100], card, board: { width: 600, height: 250 }, sight, leftFirst: false })).toStrictEqual([610, 25]);
    expect(placeCard({ peg: [100, 200], card, board: { width: 800, height: 250 }, sight, leftFirst: false })).toStrictEqual([640, -90]);
  });
});
