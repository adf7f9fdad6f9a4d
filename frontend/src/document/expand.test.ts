import { describe, expect, it } from "vitest";
import { CASES } from "../cases";
import { apply } from "./edit";
import { again, changeMove, insertStep, origins } from "./edits";
import { expand } from "./expand";
import { docOf, type Doc, type Move, type Step } from "./pattern";
import { commit, NO_PAST, redo, undo } from "./undo";

/** Moves without the fields that say nothing. */
function bare(move: Move): Record<string, unknown> {
  return Object.fromEntries(Object.entries(move).filter(([, value]) => value !== undefined && value !== "" && !(Array.isArray(value) && !value.length)));
}

const DOCS = CASES.pieces.map(({ name, document, moves }) => ({ name, doc: docOf(document), moves }));

describe("motifs and repeats", () => {
  it.each(DOCS)("come to Python's moves: $name", ({ doc, moves }) => {
    expect(expand(doc).flat().map((move) => move && bare(move))).toStrictEqual(moves.map(bare));
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
    expect(again(before, last)).toStrictEqual(next);
  });
});

describe("undo", () => {
  it("goes back and forth over any run of edits", () => {
    let doc: Doc = DOCS[0]!.doc;
    let past = NO_PAST;
    const seen = [doc];
    for (let k = 0; k < 40; k++) {
      ({ doc, past } = commit(doc, past, insertStep(k % (doc.steps.length + 1), { do: "turn" }, `edit ${k}`)));
      seen.push(doc);
    }
    for (let k = 39; k >= 0; k--) {
      const made = undo(doc, past)!;
      ({ doc, past } = made);
      expect(made.edit.label).toBe(`edit ${k}`);
      expect(doc).toStrictEqual(seen[k]);
    }
    expect(undo(doc, past)).toBeNull();
    for (let k = 1; k <= 40; k++) {
      ({ doc, past } = redo(doc, past)!);
      expect(doc).toStrictEqual(seen[k]);
    }
    expect(redo(doc, past)).toBeNull();
  });
});
