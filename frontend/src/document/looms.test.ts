import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { choiceOf, loomOf } from "./looms";
import type { Layout } from "./pattern";

const rows = fc.record(
  {
    kind: fc.constant("rows" as const),
    rows: fc.integer({ min: 1, max: 9 }),
    pegs: fc.integer({ min: 2, max: 40 }),
    pitch_mm: fc.constantFrom(10, 16, 20.5),
    channel: fc.constantFrom("near" as const, "left" as const),
    peg_mm: fc.constantFrom(4, 6),
    shift: fc.constant([0.25, 0]),
  },
  { requiredKeys: ["kind", "rows", "pegs"] },
);
const looms: fc.Arbitrary<Layout> = fc.oneof(
  rows,
  fc.record({ kind: fc.constant("joined" as const), looms: fc.array(rows, { minLength: 2, maxLength: 3 }), gap_mm: fc.constant(9) }),
  fc.record({ kind: fc.constant("round" as const), pegs: fc.integer({ min: 3, max: 60 }), diameter_mm: fc.constantFrom(80, 120), ring_gap_mm: fc.constant(9) }),
  fc.constant({ kind: "pegs" as const, pegs: [{ at: "A1", x_mm: 0, y_mm: 0 }] }),
) as fc.Arbitrary<Layout>;

describe("the loom's form", () => {
  it("changes nothing of a loom unless something is changed", () => {
    fc.assert(
      fc.property(looms, (loom) => {
        expect(loomOf(choiceOf(loom), loom)).toBe(loom);
      }),
    );
  });

  it("shows what was asked for, whatever loom it was before", () => {
    const wanted = fc.constantFrom("rows" as const, "joined" as const, "round" as const);
    fc.assert(
      fc.property(looms, wanted, fc.integer({ min: 3, max: 40 }), fc.boolean(), (loom, kind, pegs, shifted) => {
        const asked = { ...choiceOf(loom), kind, pegs, shifted: kind !== "round" && shifted };
        const shown = choiceOf(loomOf(asked, loom));
        const same = { ...shown };
        for (const key of Object.keys(same) as (keyof typeof same)[]) {
          const ofRound = ["rings", "diameter", "opens"].includes(key);
          const ofJoined = ["looms", "side"].includes(key);
          if (kind === "round" ? !ofRound && key !== "pegs" && key !== "kind" : ofRound || (ofJoined && kind === "rows")) continue;
          if (key === "shifted" && asked.rows === 1) continue; // one row alone is shifted against nothing
          expect([key, same[key]]).toStrictEqual([key, asked[key]]);
        }
      }),
    );
  });

  it("keeps what it does not speak of", () => {
    const round: Layout = { kind: "round", pegs: 12, diameter_mm: 90, ring_gap_mm: 9, peg_mm: 4 };
    expect(loomOf({ ...choiceOf(round), pegs: 14 }, round)).toStrictEqual({ ...round, pegs: 14, rings: 1, channel: "out" });
    const straight: Layout = { kind: "rows", rows: 2, pegs: 9, shift: [0, 0.25], peg_mm: 6 };
    expect(loomOf({ ...choiceOf(straight), pegs: 10 }, straight)).toMatchObject({ pegs: 10, shift: [0, 0.25], peg_mm: 6 });
  });
});
