/** Bring a motif of another piece into a document, with the motifs that it works and the colours that it names. */
import type { Edit } from "./edit";
import { freeName } from "./runs";
import type { Colour, Doc, Motif, Step } from "./pattern";

/** The edit that brings a motif, `motifs[0]`, and its name in the document. A motif that is there already is not
 * brought again; one that only shares the name of another is given a name of its own. Letters stay the document's. */
export function importMotif(doc: Doc, motifs: readonly Motif[], colours: readonly Colour[], label: string): { edit: Edit; name: string } {
  const names = new Map<string, string>();
  const coming: Motif[] = [];
  let taken = doc;
  for (const motif of motifs) {
    const same = doc.motifs.find((each) => each.name === motif.name);
    const name = !same || isSameMotif(doc, motif, motifs) ? motif.name : freeName(taken, motif.name);
    names.set(motif.name, name);
    if (same && name === motif.name) continue;
    coming.push(motif);
    taken = { ...taken, motifs: [...taken.motifs, { ...motif, name }] };
  }
  const letters = new Set(doc.colours.map((colour) => colour.letter));
  const tints = colours.filter((colour) => !letters.has(colour.letter)).map(({ letter, name, hex }) => ({ letter, name, hex }));
  return {
    name: names.get(motifs[0]?.name ?? "") ?? "",
    edit: {
      label,
      ops: [
        ...tints.map((value, k) => ({ op: "add" as const, path: `/colours/${doc.colours.length + k}`, value })),
        ...coming.map((motif, k) => ({
          op: "add" as const,
          path: `/motifs/${doc.motifs.length + k}`,
          value: { ...motif, name: names.get(motif.name)!, steps: renameMotifs(motif.steps, names) },
        })),
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
