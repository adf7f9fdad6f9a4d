/** Bands that were copied, to be laid in this piece or another: kept by the browser, so that another window has them too. */
import type { Edit } from "../document/edit";
import { addresses, moveBy } from "../document/expand";
import { parseAddress } from "../document/address";
import type { Colour, Doc, Move } from "../document/pattern";

const KEEP = "pegwright-copied";

interface Copied {
  moves: Move[];
  colours: Colour[];
}

export function copyMoves(doc: Doc, moves: readonly Move[]): void {
  const letters = new Set(moves.flatMap((move) => ("colour" in move ? [move.colour] : [])));
  const copied: Copied = { moves: [...moves], colours: doc.colours.filter(({ letter }) => letters.has(letter)) };
  localStorage.setItem(KEEP, JSON.stringify(copied));
}

function readCopied(): Copied | null {
  try {
    return JSON.parse(localStorage.getItem(KEEP) ?? "null") as Copied | null;
  } catch {
    return null;
  }
}

export function hasCopied(): boolean {
  return readCopied() !== null;
}

/** What was copied, so that the first peg of its first move is that one; null where nothing was, or it leads off the
 * rows. A colour takes the letter that a colour of that name has in the document, else its own. */
export function pastedAt(doc: Doc, peg: string): Move[] | null {
  const held = readCopied();
  const first = held && addresses(held.moves)[0];
  const [from, to] = [first && parseAddress(first), parseAddress(peg)];
  if (!held || !from || !to) return null;
  const letters = new Map(held.colours.map(({ letter, name }) => [letter, doc.colours.find((each) => each.name === name)?.letter ?? letter]));
  const moves = held.moves.map((move) => {
    const moved = moveBy(move, to.row - from.row, to.number - from.number);
    return moved && "colour" in moved ? { ...moved, colour: letters.get(moved.colour) ?? moved.colour } : moved;
  });
  return moves.every((move) => move !== null) ? moves : null;
}

/** Lay the moves there; colours that the document has not got come with them. */
export function pasteEdit(doc: Doc, index: number, moves: readonly Move[], label: string): Edit {
  const used = new Set(moves.flatMap((move) => ("colour" in move ? [move.colour] : [])));
  const coming = (readCopied()?.colours ?? []).filter(({ letter }) => used.has(letter) && !doc.colours.some((each) => each.letter === letter));
  return {
    label,
    ops: [
      ...coming.map(({ letter, name, hex }, k) => ({ op: "add" as const, path: `/colours/${doc.colours.length + k}`, value: { letter, name, hex } })),
      ...moves.map((step, k) => ({ op: "add" as const, path: `/steps/${index + k}`, value: step })),
    ],
  };
}
