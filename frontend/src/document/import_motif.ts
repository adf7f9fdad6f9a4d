/** Bring a motif of another piece into a document, with the motifs that it works and the colours that it names. */
import type { Edit } from "./edit";
import { freeName } from "./runs";
import type { Colour, Doc, Motif, Step } from "./pattern";

/** Texts in other languages: for each language, a text as it is written and what it reads there. */
type Translations = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** A motif's language, and its texts in others. */
export interface Wording {
  language: string;
  translations: Translations;
}

/** The edit that brings a motif, `motifs[0]`, and its name in the document. A motif that is there already is not
 * brought again; one that only shares the name of another is given a name of its own. Letters stay the document's.
 * What is written comes in the document's language where there is a translation, and in all others that are known. */
export function importMotif(doc: Doc, motifs: readonly Motif[], colours: readonly Colour[], label: string, wording?: Wording): { edit: Edit; name: string } {
  const own = doc.language ?? "en";
  const here = (text: string) => (wording && wording.language !== own ? wording.translations[own]?.[text] : undefined) ?? text;
  const spoken = motifs.map((motif) => translate(motif, here));
  const names = new Map<string, string>();
  const coming: Motif[] = [];
  const texts = new Set<string>();
  let taken = doc;
  for (const [k, motif] of spoken.entries()) {
    const same = doc.motifs.find((each) => each.name === motif.name);
    const name = !same || isSameMotif(doc, motif, spoken) ? motif.name : freeName(taken, motif.name);
    names.set(motif.name, name);
    if (same && name === motif.name) continue;
    coming.push(motif);
    for (const text of textsOf(motifs[k])) texts.add(text);
    taken = { ...taken, motifs: [...taken.motifs, { ...motif, name }] };
  }
  const letters = new Set(doc.colours.map((colour) => colour.letter));
  const tints = colours.filter((colour) => !letters.has(colour.letter));
  for (const { name } of tints) texts.add(name);
  const known = wording && translationsHere(doc, wording, here, texts);
  return {
    name: names.get(motifs[0]?.name ?? "") ?? "",
    edit: {
      label,
      ops: [
        ...tints.map(({ letter, name, hex }, k) => ({ op: "add" as const, path: `/colours/${doc.colours.length + k}`, value: { letter, name: here(name), hex } })),
        ...coming.map((motif, k) => ({
          op: "add" as const,
          path: `/motifs/${doc.motifs.length + k}`,
          value: { ...motif, name: names.get(motif.name)!, steps: renameMotifs(motif.steps, names) },
        })),
        ...(known ? [{ op: "add" as const, path: "/translations", value: known }] : []),
      ],
    },
  };
}

/** Whether the document's motif of that name, and all that it works, is what would be brought. */
function isSameMotif(doc: Doc, motif: Motif, motifs: readonly Motif[]): boolean {
  const own = doc.motifs.find((each) => each.name === motif.name);
  if (JSON.stringify(own) !== JSON.stringify(motif)) return false;
  return motifsUsed(motif.steps).every((name) => {
    const inner = motifs.find((each) => each.name === name);
    return !inner || inner === motif || isSameMotif(doc, inner, motifs);
  });
}

function motifsUsed(steps: readonly Step[]): string[] {
  return steps.flatMap((step) => (step.do === "motif" ? [step.name] : step.do === "repeat" ? motifsUsed(step.steps) : []));
}

function renameMotifs(steps: readonly Step[], names: ReadonlyMap<string, string>): Step[] {
  return steps.map((step) => {
    if (step.do === "motif") return { ...step, name: names.get(step.name) ?? step.name };
    if (step.do === "repeat") return { ...step, steps: renameMotifs(step.steps, names) };
    return step;
  });
}

const WRITTEN = ["note", "warning", "picture"] as const;

/** All that is written in a motif. */
function textsOf(part: unknown): string[] {
  if (Array.isArray(part)) return part.flatMap(textsOf);
  if (typeof part !== "object" || part === null) return [];
  return Object.entries(part).flatMap(([key, value]) =>
    typeof value === "string" ? (isWritten(key) && value ? [value] : []) : textsOf(value));
}

/** The same with all that is written in other words. */
function translate<T>(part: T, words: (text: string) => string): T {
  if (Array.isArray(part)) return part.map((each) => translate(each, words)) as T;
  if (typeof part !== "object" || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([key, value]) =>
    [key, typeof value === "string" ? (isWritten(key) ? words(value) : value) : translate(value, words)])) as T;
}

function isWritten(key: string): boolean {
  return (WRITTEN as readonly string[]).includes(key);
}

/** The document's translations with those of texts that come; undefined where nothing is new. */
function translationsHere(doc: Doc, wording: Wording, here: (text: string) => string, texts: ReadonlySet<string>): Record<string, Record<string, string>> | undefined {
  const own = doc.language ?? "en";
  const found: Record<string, Record<string, string>> = { ...doc.translations };
  let isNew = false;
  const tables: Translations = { ...wording.translations, [wording.language]: Object.fromEntries([...texts].map((text) => [text, text])) };
  for (const [language, table] of Object.entries(tables)) {
    if (language === own) continue;
    for (const text of texts) {
      const said = table[text];
      // A text that has no word in the document's language stays as it is, and is no translation of itself.
      if (said === undefined || (language === wording.language && here(text) === text) || found[language]?.[here(text)] !== undefined) continue;
      found[language] = { ...found[language], [here(text)]: said };
      isNew = true;
    }
  }
  return isNew ? found : undefined;
}
