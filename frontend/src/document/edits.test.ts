import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseAddress, printAddress } from "./address";
import { apply } from "./edit";
import { repeatedMove, repeatToEnd, moveTo } from "./edits";
import { mirrorRun, strideOfRun, timesThatFit, motifUseAt } from "./runs";
import { addresses, expand, moveBy } from "./expand";
import type { Doc, Move } from "./pattern";

const lay = (...over: string[]): Move => ({ do: "place", colour: "A", over });
const hook = (from: string, to: string): Move => ({ do: "hook", from, to });
const onLoom = (rows: number, pegs: number) => (at: string) => {
  const spot = parseAddress(at);
  return spot !== null && spot.row >= 0 && spot.row < rows && spot.number <= pegs;
};
const doc = (steps: Move[], more: Partial<Doc> = {}): Doc =>
  ({ pegwright: 2, title: "Neap", loom: { kind: "rows", rows: 3, pegs: 13 }, colours: [], motifs: [], steps, ...more }) as Doc;

describe("once more", () => {
  it("goes on as far as the last two went, and stays where both were", () => {
    expect(repeatedMove(lay("A1", "A2"), lay("A2", "A3"))).toStrictEqual(lay("A3", "A4"));
    expect(repeatedMove(lay("A1", "A2"), lay("A1", "A2"))).toStrictEqual(lay("A1", "A2"));
    expect(repeatedMove(null, lay("A1", "A2"))).toStrictEqual(lay("A2", "A3"));
    expect(repeatedMove(lay("A1", "A2"), hook("A9", "A8"))).toStrictEqual(hook("A8", "A7"));
    expect(repeatedMove(null, { do: "hang", colour: "A" } as Move)).toStrictEqual({ do: "hang", colour: "A" });
    expect(repeatedMove(hook("A3", "A2"), hook("A2", "A1"))).toBeNull();
  });

  it("to the end lays a chain along the loom and hooks it back", () => {
    const is = onLoom(1, 13);
    const laid = [lay("A1", "A2"), ...repeatToEnd(null, lay("A1", "A2"), is)];
    expect(laid.map((move) => addresses([move]).join(" "))).toStrictEqual(Array.from({ length: 12 }, (_, k) => `A${k + 1} A${k + 2}`));
    const back = repeatToEnd(null, hook("A12", "A11"), is);
    expect(back.at(-1)).toStrictEqual(hook("A2", "A1"));
    expect(back).toHaveLength(10);
  });

  it("to the end is once more, done until a peg is not there", () => {
    const number = fc.integer({ min: 1, max: 14 });
    const peg = fc.tuple(fc.integer({ min: 0, max: 3 }), number).map(([row, at]) => printAddress({ row, number: at })!);
    const is = onLoom(3, 12);
    fc.assert(
      fc.property(peg, peg, peg, peg, (a, b, c, d) => {
        fc.pre(a !== b && c !== d);
        const slow: Move[] = [];
        let [before, last] = [lay(a, b), lay(c, d)];
        for (;;) {
          const next = repeatedMove(before, last);
          if (!next || !addresses([next]).every(is) || JSON.stringify(next) === JSON.stringify(last)) break;
          slow.push(next);
          [before, last] = [last, next as typeof last];
        }
        expect(repeatToEnd(lay(a, b), lay(c, d), is)).toStrictEqual(slow);
      }),
      { numRuns: 500 },
    );
  });
});

describe("a run", () => {
  it("moves on forwards where it was laid forwards, and back where it was hooked back", () => {
    const lantern = [lay("B1", "A2"), lay("A2", "B3"), lay("B1", "C2"), lay("C2", "B3")];
    expect(strideOfRun(doc(lantern), { from: 0, to: 3 })).toStrictEqual({ rows: 0, pegs: 2 });
    expect(strideOfRun(doc([hook("B5", "B4"), hook("B4", "B3")]), { from: 0, to: 1 })).toStrictEqual({ rows: 0, pegs: -2 });
  });

  it("is worked as often as the pegs allow, and not once more", () => {
    const steps = [lay("B1", "A2"), lay("A2", "B3")];
    const [run, is] = [{ from: 0, to: 1 }, onLoom(3, 13)];
    expect(timesThatFit(doc(steps), run, { rows: 0, pegs: 2 }, is)).toBe(6);
    expect(timesThatFit(doc(steps), run, { rows: 0, pegs: -2 }, is)).toBe(1);
    for (const pegs of [1, 2, 3, 5]) {
      const times = timesThatFit(doc(steps), run, { rows: 0, pegs }, is);
      const fits = (k: number) => steps.every((step) => addresses([moveBy(step, 0, k * pegs)!]).every(is));
      expect([pegs, fits(times - 1), fits(times)]).toStrictEqual([pegs, true, false]);
    }
  });

  it("turned half round twice is the run again", () => {
    const steps = [lay("A1", "B2"), lay("B2", "C4"), hook("C4", "A1")];
    const run = { from: 0, to: 2 };
    const turned = apply(doc(steps), mirrorRun(doc(steps), run, ["rows", "pegs"], "wave", 0, 0, "")).doc;
    const image = expand(turned)[1] as Move[];
    expect(image).toStrictEqual([lay("C4", "B3"), lay("B3", "A1"), hook("A1", "C4")]);
    const once = doc(image);
    const twice = apply(once, mirrorRun(once, run, ["rows", "pegs"], "wave", 0, 0, "")).doc;
    expect(expand(twice)[1]).toStrictEqual(steps);
  });
});

describe("putting", () => {
  it("a band so that its first peg is the one pressed", () => {
    expect(moveTo(lay("B2", "C3"), "A5")).toStrictEqual(lay("A5", "B6"));
    expect(moveTo(lay("B2", "A3"), "A1")).toBeNull(); // its other peg would lie before row A
  });

  it("a motif likewise, mirrored or not, whatever it is made of", () => {
    const inner = { name: "wave", steps: [lay("A1", "B2"), lay("B2", "C4")] };
    const outer = { name: "swell", steps: [{ do: "motif", name: "wave", pegs: 2 }] };
    const own = doc([], { motifs: [inner, outer] as Doc["motifs"] });
    for (const motif of own.motifs)
      for (const mirror of [[], ["rows"], ["pegs"], ["rows", "pegs"]] as const) {
        const use = motifUseAt(own, motif, "C7", "A", mirror)!;
        const [first] = addresses(expand({ ...own, steps: [use] }).flat().filter((move) => move !== null));
        if (first) expect(first).toBe("C7");
      }
  });
});
