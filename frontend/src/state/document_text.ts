/** A document's own texts in the page's language, as far as it carries them. */
import type { Doc } from "../document/pattern";
import { colourName, spoken } from "../words/words.svelte";

/** A text of the document: its translation, or for a colour that pieces begin with the page's word, else as written. */
export function textOf(doc: Doc | null, text: string): string {
  return doc?.translations?.[spoken.language]?.[text] ?? colourName(text);
}
