/** A technique of the library as a piece to begin with, or as a motif to be laid. */
import { docOf, type Colour, type Pattern } from "../document/pattern";
import type { Saved, ShelvedMotif, Technique } from "../schema/answers";
import { colourName } from "../words/words.svelte";
import { connection } from "./connection";
import { withTintWords } from "./tint_words";

/** Lay a piece of the technique on the shelf, under a title that is free there. */
export async function beginTechnique(one: Technique, title: (wanted: string) => string): Promise<Saved> {
  const { document } = await connection.wire.technique(one.name);
  const doc = withTintWords(docOf(document as unknown as Pattern));
  return connection.wire.add({ ...doc, title: title(doc.title) });
}

/** The technique as a motif; its colours are called as the page calls them. */
export async function motifOfTechnique(one: Technique): Promise<ShelvedMotif> {
  const { motif } = await connection.wire.technique(one.name);
  const colours = (motif.colours as unknown as Colour[]).map((colour) => ({ ...colour, name: colourName(colour.name) }));
  return { ...motif, colours: colours as unknown as ShelvedMotif["colours"] };
}
