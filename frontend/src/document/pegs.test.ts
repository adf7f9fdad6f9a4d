import fc from "fast-check";
import { expect, test } from "vitest";
import { addPeg, changePeg, freePegsOf, loomOfPegs, nextAddress, type FreePeg } from "./pegs";

const ROWS = { kind: "rows", rows: 1, pegs: 2 } as const;

test("a loom's pegs are drawn as they stood, and go on from there", () => {
  const pegs = freePegsOf(ROWS, [["A1", 0, 0, 90], ["A2", 0, 16, 90]]);
  expect(pegs).toEqual([{ at: "A1", x_mm: 0, y_mm: 0, channel: "far" }, { at: "A2", x_mm: 0, y_mm: 16, channel: "far" }]);
  expect(addPeg(pegs, 20, 8, "A2").at(-1)).toEqual({ at: "A3", x_mm: 20, y_mm: 8, channel: "far" });
  expect(addPeg(pegs, 1, 15, null)).toBe(pegs);
  expect(changePeg(pegs, "A2", { at: "A1" })).toBe(pegs);
  expect(changePeg(pegs, "A2", { x_mm: 1, y_mm: 1 })).toBe(pegs);
  expect(changePeg(pegs, "A2", { at: "B7" }).map(({ at }) => at)).toEqual(["A1", "B7"]);
  expect(loomOfPegs(pegs, { ...ROWS, peg_mm: 4 })).toEqual({ kind: "pegs", peg_mm: 4, pegs });
  const drawn = loomOfPegs(pegs, ROWS);
  expect(loomOfPegs([...pegs], drawn)).toBe(drawn);
});

test("whatever is drawn, no two pegs have one name or one place", () => {
  const spot = fc.integer({ min: 0, max: 30 });
  const act = fc.record({ x: spot, y: spot, pick: fc.nat(20), add: fc.boolean() });
  fc.assert(
    fc.property(fc.array(act, { maxLength: 40 }), (acts) => {
      let pegs: readonly FreePeg[] = [{ at: "A1", x_mm: 0, y_mm: 0 }];
      for (const { x, y, pick, add } of acts) {
        const at = pegs[pick % pegs.length]!.at;
        pegs = add ? addPeg(pegs, x, y, at) : changePeg(pegs, at, { x_mm: x, y_mm: y });
      }
      expect(new Set(pegs.map(({ at }) => at)).size).toBe(pegs.length);
      expect(pegs.some(({ at }) => at === nextAddress(pegs, null))).toBe(false);
      for (const a of pegs) for (const b of pegs) if (a !== b) expect(Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm)).toBeGreaterThanOrEqual(2);
    }),
  );
});
