/** The studio's own colours, and their names in every language for a document that has them. */
import type { Doc } from "../document/pattern";
import { LANGUAGES, spoken, t, tintKeyOf, wordIn, type Language } from "../words/words.svelte";

const OWN = [
  ["tint-foam-white", "#f2efe6"], ["tint-slate-blue", "#34506b"], ["tint-buoy-red", "#b5382a"],
  ["tint-lamp-yellow", "#f2c93a"], ["tint-weed-green", "#2f6b4f"], ["tint-sand", "#d9b98a"],
  ["tint-tar-black", "#26221f"], ["tint-stone-grey", "#8a8d8f"],
] as const;

export interface NamedTint {
  name: string;
  tint: string;
  have: number | null;
}

/** The colours that the studio offers to makers who have written down none of their own. */
export function ownColours(): NamedTint[] {
  return OWN.map(([key, tint]) => ({ name: t(key), tint, have: null }));
}

/** The document with the studio's own colours named in every language, so that none is missing in a lesson. */
export function withTintWords(doc: Doc): Doc {
  const own = (doc.language ?? spoken.language) as Language;
  const translations: Record<string, Record<string, string>> = { ...doc.translations };
  for (const { name } of doc.colours) {
    const key = tintKeyOf(name);
    if (!key) continue;
    for (const other of Object.keys(LANGUAGES) as Language[])
      if (other !== own) translations[other] = { [name]: wordIn(other, key), ...translations[other] };
  }
  return { ...doc, translations };
}
