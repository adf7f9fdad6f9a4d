/** The document's types, as the Python schema gives them, and small questions about them. */
import type { components } from "../schema/types";

type Schemas = components["schemas"];
export type Pattern = Schemas["Pattern"];
export type Step = NonNullable<Pattern["steps"]>[number];
export type Place = Schemas["Place"];
export type Hook = Schemas["Hook"];
export type Repeat = Schemas["Repeat"];
export type Use = Schemas["Use"];
export type Move = Exclude<Step, Repeat | Use>;
export type Motif = Schemas["Motif"];
export type Colour = Schemas["Colour"];
export type Layout = Pattern["loom"];
export type Rows = Schemas["Rows"];

/** A document as the server opens it leaves empty lists out; here they are always there. */
export type Doc = Pattern & { steps: Step[]; colours: Colour[]; motifs: Motif[] };

export function docOf(pattern: Pattern): Doc {
  return {
    ...pattern,
    colours: pattern.colours ?? [],
    motifs: pattern.motifs ?? [],
    steps: pattern.steps ?? [],
  };
}

/** A letter that no colour has yet: A to Z, then A1 to Z9. */
export function freeLetter(doc: Doc): string {
  const taken = new Set(doc.colours.map((colour) => colour.letter));
  for (const digit of ["", ..."123456789"])
    for (const letter of "ABCDEFGHIJKLMNOPQRSTUVWXYZ") if (!taken.has(letter + digit)) return letter + digit;
  return "Zz";
}
