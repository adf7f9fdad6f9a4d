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

  describe("in words", () => {
    const cap: Motif = { name: "cap", steps: [{ do: "wind", colour: "G", on: "A1", note: "Holds all bands." } as Move] };
    const wording = {
      language: "en",
      translations: { de: { "Holds all bands.": "Hält alle Gummis.", "weed green": "tanggrün" }, es: { "Holds all bands.": "Sujeta todas las gomitas." } },
    };
    const bring = (here: Doc) => apply(here, importMotif(here, [cap], [green], "", wording).edit).doc;

    it("come with their translations into a piece of the same language", () => {
      const made = bring(doc({ translations: { de: { slate: "schiefer" } } }));
      expect(made.motifs[0]).toStrictEqual(cap);
      expect(made.translations).toStrictEqual({
        de: { slate: "schiefer", "Holds all bands.": "Hält alle Gummis.", "weed green": "tanggrün" },
        es: { "Holds all bands.": "Sujeta todas las gomitas." },
      });
    });

    it("come in the language of the piece, and what they were becomes a translation", () => {
      const made = bring(doc({ language: "de" }));
      expect(made.motifs[0]!.steps[0]).toMatchObject({ note: "Hält alle Gummis." });
      expect(made.colours.at(-1)!.name).toBe("tanggrün");
      expect(importMotif(made, [cap], [green], "", wording).edit.ops).toStrictEqual([]); // not twice
      expect(made.translations).toStrictEqual({
        es: { "Hält alle Gummis.": "Sujeta todas las gomitas." },
        en: { "Hält alle Gummis.": "Holds all bands.", "tanggrün": "weed green" },
      });
    });

    it("stay as they are where no translation is known, and never change one of the piece's own", () => {
      const made = bring(doc({ language: "fr", translations: { de: { "Holds all bands.": "Trägt alle Gummis." } } }));
      expect(made.motifs[0]).toStrictEqual(cap);
      expect(made.translations!.de!["Holds all bands."]).toBe("Trägt alle Gummis.");
      expect(made.translations!.en).toBeUndefined();
    });
  });
});
