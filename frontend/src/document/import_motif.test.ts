import { describe, expect, it } from "vitest";
import { apply } from "./edit";
import { importMotif } from "./import_motif";
import { expand } from "./expand";
import type { Colour, Doc, Motif, Move } from "./pattern";

const lay = (...over: string[]): Move => ({ do: "place", colour: "A", over });
const doc = (more: Partial<Doc> = {}): Doc =>
  ({ pegwright: 2, title: "Neap", loom: { kind: "rows", rows: 3, pegs: 13 }, colours: [{ letter: "A", name: "slate", hex: "#34506b" }], motifs: [], steps: [], ...more }) as Doc;
const wave: Motif = { name: "wave", steps: [lay("A1", "B2")] };
const swell: Motif = { name: "swell", steps: [{ do: "repeat", times: 2, pegs: 2, steps: [{ do: "motif", name: "wave" }] }] };
const green: Colour = { letter: "G", name: "weed green", hex: "#2f6b4f" };
const moves = (own: Doc, name: string) => expand({ ...own, steps: [{ do: "motif", name }] }).flat();

describe("bringing a motif", () => {
  it("brings what it works and the colours that are wanting, and it is worked as before", () => {
    const { edit, name } = importMotif(doc(), [swell, wave], [green, { letter: "A", name: "red", hex: "#b5382a" }], "");
    const made = apply(doc(), edit).doc;
    expect(name).toBe("swell");
    expect(made.colours).toStrictEqual([...doc().colours, green]); // the letter A stays what it is here
    expect(moves(made, name)).toStrictEqual(moves(doc({ motifs: [swell, wave] }), "swell"));
  });

  it("brings nothing twice", () => {
    const here = doc({ motifs: [swell, wave] });
    expect(importMotif(here, [swell, wave], [], "")).toStrictEqual({ edit: { label: "", ops: [] }, name: "swell" });
  });

  it("never changes a motif that only has the same name, be it itself or one within", () => {
    const other: Motif = { name: "wave", steps: [lay("C1", "C2")] };
    for (const own of [[other], [swell, other]]) {
      const here = doc({ motifs: own });
      const before = own.map((motif) => moves(here, motif.name));
      const { edit, name } = importMotif(here, [swell, wave], [], "");
      const made = apply(here, edit).doc;
      expect(moves(made, name)).toStrictEqual(moves(doc({ motifs: [swell, wave] }), "swell"));
      expect(own.map((motif) => moves(made, motif.name))).toStrictEqual(before);
      expect(new Set(made.motifs.map((motif) => motif.name)).size).toBe(made.motifs.length);
    }
  });
});
