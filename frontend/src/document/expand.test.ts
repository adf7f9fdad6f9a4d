import { describe, expect, it } from "vitest";
import { CASES } from "../cases";
import { apply } from "./edit";
import { repeatedMove, changeMove, insertStep, origins } from "./edits";
import { freeName, makeMotif, mirrorRun, strideOfRun, removeRun, repeatRun, motifUseAt } from "./runs";
import { addresses, expand, moveBy } from "./expand";
import { docOf, type Doc, type Move, type Step } from "./pattern";
import { commit, EMPTY_HISTORY, redo, undo } from "./undo";

/** Moves without the fields that say nothing. */
function bare(move: Move): Record<string, unknown> {
  return Object.fromEntries(Object.entries(move).filter(([, value]) => value !== undefined && value !== "" && !(Array.isArray(value) && !value.length)));
}

const DOCS = CASES.pieces.map(({ name, document, moves }) => ({ name, doc: docOf(document), moves }));

describe("motifs and repeats", () => {
  it.each(DOCS)("come to Python's moves: $name", ({ doc, moves }) => {
    expect(expand(doc).flat().map((move) => move && bare(move))).toStrictEqual(moves.map(bare));
  });

  it.each(CASES.mirrored)("are mirrored about the middle of all that they work out to: case %#", ({ document, moves }) => {
    expect(expand(docOf(document)).flat().map((move) => move && bare(move))).toStrictEqual(moves.map(bare));
  });

  it.each(DOCS)("tell where every move comes from: $name", ({ doc, moves }) => {
    const found = origins(doc);
    expect(found.length).toBe(moves.length);
    const each = expand(doc);
    found.forEach(({ index, within, of }, k) => {
      expect(each[index]!.length).toBe(of);
      expect(bare(each[index]![within]!)).toStrictEqual(bare(moves[k]!));
    });
  });

  it.each(DOCS)("are taken apart for one move and nothing else changes: $name", ({ doc }) => {
    const all = origins(doc);
    for (const k of [0, Math.floor(all.length / 2), all.length - 1]) {
      const edit = changeMove(doc, all[k]!, (move) => ({ ...move, note: "here" }), "")!;
      const after = expand(apply(doc, edit).doc).flat();
      const before = expand(doc).flat();
      expect(after.map((move, i) => (i === k ? { ...move, note: before[i]!.note } : move)).map((m) => bare(m as Move))).toStrictEqual(
        before.map((m) => bare(m!)),
      );
      expect(after[k]!.note).toBe("here");
    }
  });

  it("end where a repeat would run on without end", () => {
    const endless: Step = { do: "repeat", times: 1e10, steps: [{ do: "repeat", times: 1e10, steps: [] }] };
    expect(expand({ ...DOCS[0]!.doc, steps: [endless] })[0]).toStrictEqual([]);
  });
});

describe("once more", () => {
  const place = (...over: string[]): Move => ({ do: "place", colour: "A", over });
  it.each<[Move | null, Move, Move | null]>([
    [null, place("A1", "A2"), place("A2", "A3")],
    [place("A1", "A2"), place("A2", "A3"), place("A3", "A4")],
    [place("A1", "A2"), place("A3", "A4"), place("A5", "A6")],
    [place("B1", "A2"), place("B3", "A4"), place("B5", "A6")],
    [{ do: "hook", from: "A9", to: "A8" }, { do: "hook", from: "A8", to: "A7" }, { do: "hook", from: "A7", to: "A6" }],
    [null, { do: "hook", from: "A2", to: "A1" }, null],
    [null, { do: "wind", colour: "R", on: "B2" }, { do: "wind", colour: "R", on: "B3" }],
    [null, { do: "turn" }, null],
  ])("%j, %j → %j", (before, last, next) => {
    expect(repeatedMove(before, last)).toStrictEqual(next);
  });
});

describe("undo", () => {
  it("goes back and forth over any run of edits", () => {
    let doc: Doc = DOCS[0]!.doc;
    let history = EMPTY_HISTORY;
    const seen = [doc];
    for (let k = 0; k < 40; k++) {
      ({ doc, history } = commit(doc, history, insertStep(k % (doc.steps.length + 1), { do: "turn" }, `edit ${k}`)));
      seen.push(doc);
    }
    for (let k = 39; k >= 0; k--) {
      const undone = undo(doc, history)!;
      ({ doc, history } = undone);
      expect(undone.edit.label).toBe(`edit ${k}`);
      expect(doc).toStrictEqual(seen[k]);
    }
    expect(undo(doc, history)).toBeNull();
    for (let k = 1; k <= 40; k++) {
      ({ doc, history } = redo(doc, history)!);
      expect(doc).toStrictEqual(seen[k]);
    }
    expect(redo(doc, history)).toBeNull();
  });
});

describe("runs of steps", () => {
  const lantern = DOCS.find(({ name }) => name === "riding-lights")!.doc;
  const plain: Doc = { ...lantern, motifs: [], steps: expand(lantern).flat().filter((move) => move !== null).slice(0, 4) };
  const run = { from: 0, to: 3 };
  const moves = (doc: Doc) => expand(doc).flat().map((move) => move && bare(move));

  it("a motif undone of a run comes to the same moves", () => {
    const undone = apply(plain, makeMotif(plain, run, "rim", "")).doc;
    expect(undone.steps).toStrictEqual([{ do: "motif", name: "rim", colours: { A: "A" } }]);
    expect(moves(undone)).toStrictEqual(moves(plain));
  });

  it("a repeat comes to the run moved on, time after time", () => {
    const { rows, pegs } = strideOfRun(plain, run);
    expect({ rows, pegs }).toStrictEqual({ rows: 0, pegs: 2 });
    const undone = apply(plain, repeatRun(plain, run, 3, rows, pegs, "")).doc;
    const byHand = [0, 2, 4].flatMap((on) => plain.steps.map((step) => bare(moveBy(step as Move, 0, on)!)));
    expect(moves(undone)).toStrictEqual(byHand);
  });

  it("a mirror image names the same pegs, and mirrored again it is as it was", () => {
    for (const way of ["rows", "pegs"] as const) {
      const undone = apply(plain, mirrorRun(plain, run, [way], "rim", 0, 0, "")).doc;
      const [first, image] = expand(undone);
      const named = (each: (Move | null)[]) => new Set(addresses(each as Move[]));
      expect(named(image!)).toStrictEqual(named(first!));
      expect(image).not.toStrictEqual(first);
      const twice: Doc = {
        ...undone,
        motifs: [...undone.motifs, { name: "image", steps: image as Step[] }],
        steps: [{ do: "motif", name: "image", mirror: [way] }],
      };
      expect(moves(twice)).toStrictEqual(first!.map((move) => bare(move!)));
    }
  });

  it("a motif is laid with its first peg where one presses, in the colour at hand", () => {
    const outline = lantern.motifs.find((motif) => motif.name === "outline")!;
    const use = motifUseAt(lantern, outline, "B5", "R")!;
    expect(use).toStrictEqual({ do: "motif", name: "outline", pegs: 4, colours: { rim: "R" } });
    const [undone] = expand({ ...lantern, steps: [use] });
    expect(undone![0]).toMatchObject({ do: "place", colour: "R", over: ["B5", "A6"] });
  });

  it("are taken out and come back by undo", () => {
    const { doc, history } = commit(plain, EMPTY_HISTORY, removeRun({ from: 1, to: 2 }, ""));
    expect(doc.steps).toStrictEqual([plain.steps[0], plain.steps[3]]);
    expect(undo(doc, history)!.doc).toStrictEqual(plain);
  });

  it("names are free", () => {
    expect(freeName(lantern, "outline")).toBe("outline 2");
    expect(freeName(lantern, "wave")).toBe("wave");
  });
});
