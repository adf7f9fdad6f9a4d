import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CASES } from "../cases";
import { apply } from "./edit";
import { expand } from "./expand";
import { docOf, type Doc, type Move } from "./pattern";
import { coloursOf, makeMotif, moveRun, readTurns, recolourRun, repeatRun } from "./runs";

const DOCS = CASES.pieces.map(({ document }) => docOf(document)).filter((doc) => doc.steps.length);
const movesOf = (doc: Doc): (Move | null)[] => expand(doc).flat();
const inColours = (moves: readonly (Move | null)[], from: string, to: string) =>
  moves.map((move) => (move && "colour" in move && move.colour === from ? { ...move, colour: to } : move));

describe("runs of steps", () => {
  it("of another colour lay the same bands in it, and no others do; undone it is as it was", () => {
    fc.assert(
      fc.property(fc.constantFrom(...DOCS), fc.nat(), fc.nat(), fc.nat(), (doc, a, b, c) => {
        const [from, to] = [a % doc.steps.length, b % doc.steps.length].sort((x, y) => x - y) as [number, number];
        const letters = coloursOf(doc, { from, to });
        const letter = letters[c % letters.length];
        if (!letter) return;
        const { doc: made, inverse } = apply(doc, recolourRun(doc, { from, to }, letter, "Q", "recolour"));
        const [before, after] = [expand(doc), expand(made)];
        before.forEach((moves, k) => expect(after[k]).toStrictEqual(k >= from && k <= to ? inColours(moves, letter, "Q") : moves));
        expect(apply(made, inverse).doc).toStrictEqual(doc);
      }),
    );
  });

  it("are repeated in colours that change with the round, and those are changed in their turn", () => {
    const doc = docOf({
      pegwright: 3,
      title: "Tide",
      loom: { kind: "rows", rows: 1, pegs: 9 },
      colours: ["A", "F", "C"].map((letter) => ({ letter, name: letter, hex: "#445566" })),
      steps: [{ do: "place", colour: "A", over: ["A1", "A2"] }],
    });
    expect(readTurns(doc, "A", "A, F x C")).toStrictEqual({ A: ["A", "F", "C"] });
    expect(readTurns(doc, "A", "F")).toStrictEqual({});
    const striped = apply(doc, repeatRun(doc, { from: 0, to: 0 }, 5, 0, 1, "", readTurns(doc, "A", "A F C"))).doc;
    const letters = (of: Doc) => movesOf(of).map((move) => move && "colour" in move && move.colour);
    expect(letters(striped)).toStrictEqual(["A", "F", "C", "A", "F"]);
    const recoloured = apply(striped, recolourRun(striped, { from: 0, to: 0 }, "A", "C", "")).doc;
    expect(letters(recoloured)).toStrictEqual(["C", "F", "C", "C", "F"]);
  });

  it("made a motif lay the same bands, each colour in a slot", () => {
    for (const doc of DOCS) {
      const { doc: made } = apply(doc, makeMotif(doc, { from: 0, to: doc.steps.length - 1 }, "whole", "motif"));
      expect(movesOf(made)).toStrictEqual(movesOf(doc));
      expect(made.motifs.at(-1)?.colours ?? []).toStrictEqual(coloursOf(doc, { from: 0, to: doc.steps.length - 1 }));
    }
  });

  it("are moved before any step, and nothing is lost", () => {
    fc.assert(
      fc.property(fc.constantFrom(...DOCS), fc.nat(), fc.nat(), fc.nat(), (doc, a, b, c) => {
        const [from, to] = [a % doc.steps.length, b % doc.steps.length].sort((x, y) => x - y) as [number, number];
        const before = c % (doc.steps.length + 1);
        const edit = moveRun(doc, { from, to }, before, "move");
        if (!edit) {
          expect(before >= from && before <= to + 1).toBe(true);
          return;
        }
        const { doc: made } = apply(doc, edit);
        const rest = doc.steps.filter((_, k) => k < from || k > to);
        const at = rest.filter((_, k) => (k < from ? k : k + to - from + 1) < before).length;
        expect(made.steps).toStrictEqual(rest.toSpliced(at, 0, ...doc.steps.slice(from, to + 1)));
      }),
    );
  });
});
