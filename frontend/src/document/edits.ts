/** What a maker changes, each as one edit. None of these looks at the screen. */
import { valueAt, type Edit } from "./edit";
import { addresses, expand, moveBy } from "./expand";
import { parseAddress, printAddress } from "./address";
import type { Colour, Doc, Layout, Move, Step } from "./pattern";

/** Put a step in before the step of that index. */
export function insertStep(index: number, step: Step, label: string): Edit {
  return { label, ops: [{ op: "add", path: `/steps/${index}`, value: step }] };
}

/** Put several steps in, the first before the step of that index. */
export function insertSteps(index: number, steps: readonly Step[], label: string): Edit {
  return { label, ops: steps.map((step, k) => ({ op: "add", path: `/steps/${index + k}`, value: step })) };
}

/** Replace one step by others; none removes it. */
export function replaceStep(index: number, steps: readonly Step[], label: string): Edit {
  return {
    label,
    ops: [
      { op: "remove", path: `/steps/${index}` },
      ...steps.map((step, k) => ({ op: "add" as const, path: `/steps/${index + k}`, value: step })),
    ],
  };
}

/** Where a move comes from: its step of the document, its place among the moves of that step, how many those are. */
export interface Origin {
  index: number;
  within: number;
  of: number;
}

/** Map the number of every move (from 1, as the maker counts) to where it comes from. */
export function origins(doc: Doc): Origin[] {
  return expand(doc).flatMap((moves, index) =>
    moves.flatMap((move, within) => (move ? [{ index, within, of: moves.length }] : [])),
  );
}

/** Change one move alone: the repeat or motif that it comes from is taken apart where need be.
 * `change` returns the move's successor, or null to leave it out. */
export function changeMove(
  doc: Doc,
  origin: Origin,
  change: (move: Move) => Move | null,
  label: string,
): Edit | null {
  return changeMoves(doc, [origin], change, label);
}

/** Change several moves, each alone. */
export function changeMoves(doc: Doc, all: readonly Origin[], change: (move: Move) => Move | null, label: string): Edit | null {
  const worked = expand(doc);
  const byStep = new Map<number, Set<number>>();
  for (const { index, within } of all) byStep.set(index, (byStep.get(index) ?? new Set()).add(within));
  const ops = [...byStep]
    .sort(([a], [b]) => b - a) // the last first: the places of those before it stay as they are
    .flatMap(([index, chosen]) => {
      const steps = (worked[index] ?? []).flatMap((move, k) => {
        const kept = move && chosen.has(k) ? change(move) : move;
        return kept ? [kept] : [];
      });
      return replaceStep(index, steps, label).ops;
    });
  return ops.length ? { label, ops } : null;
}

/** Change a step as it stands in the document, and with it every move that comes from it. */
export function changeEverywhere(path: string, value: Step, label: string): Edit {
  return { label, ops: [{ op: "replace", path, value }] };
}

/** Write a note or a warning on the step at a path; an empty one takes it away. */
export function writeOnStep(doc: Doc, path: string, field: "note" | "warning", text: string, label: string): Edit | null {
  const step = valueAt(doc, path) as Step | undefined;
  const old = step?.[field] ?? "";
  if (!step || old === text) return null;
  const where = `${path}/${field}`;
  return { label, ops: [text ? { op: "add", path: where, value: text } : { op: "remove", path: where }] };
}

/** Remove the step at a path; a repeat or motif that would be empty stays, doing nothing. */
export function removeAt(path: string, label: string): Edit {
  return { label, ops: [{ op: "remove", path }] };
}

/** Do the last move once more, moved on as far as it was moved on from the one before; null off the rows.
 *
 * The stride is that between the last two moves if they are of one kind (none at all where both were made in
 * the same place); else, for a band over pegs, that from its first to its last peg, and for a hooked loop that
 * from peg to peg. A move that names no peg is done again as it is. */
export function repeatedMove(before: Move | null, last: Move): Move | null {
  if (last.do === "turn") return null; // turned repeatedMove, the loom would be as it was
  const stride = strideOf(before, last);
  return moveBy(last, stride.rows, stride.pegs);
}

/** The last move again and repeatedMove, as long as every peg that it names is there. `room` is the most that it may be. */
export function repeatToEnd(before: Move | null, last: Move, isPeg: (at: string) => boolean, room = 700): Move[] {
  const stride = strideOf(before, last);
  const made: Move[] = [];
  if (!stride.rows && !stride.pegs) return made;
  for (let next = last; made.length < room; made.push(next)) {
    const on = moveBy(next, stride.rows, stride.pegs);
    if (!on || !addresses([on]).every(isPeg)) break;
    next = on;
  }
  return made;
}

function strideOf(before: Move | null, last: Move): Stride {
  return (before && strideBetween(before, last)) ?? ownStride(last);
}

export interface Stride {
  rows: number;
  pegs: number;
}

function strideBetween(a: Move, b: Move): Stride | null {
  if (a.do !== b.do) return null;
  const from = addresses([a]).map((text) => parseAddress(text)!);
  const to = addresses([b]).map((text) => parseAddress(text)!);
  if (from.length !== to.length || !from.length) return null;
  const rows = to[0]!.row - from[0]!.row;
  const pegs = to[0]!.number - from[0]!.number;
  const even = to.every((p, i) => p.row - from[i]!.row === rows && p.number - from[i]!.number === pegs);
  return even ? { rows, pegs } : null;
}

function ownStride(move: Move): Stride {
  const pegs = addresses([move]).map((text) => parseAddress(text)!);
  const first = pegs[0];
  const last = pegs.at(-1);
  if (!first || !last) return { rows: 0, pegs: 0 };
  if (pegs.length === 1) return { rows: 0, pegs: 1 };
  return { rows: last.row - first.row, pegs: last.number - first.number };
}

export function addColour(doc: Doc, colour: Colour, label: string): Edit {
  return { label, ops: [{ op: "add", path: `/colours/${doc.colours.length}`, value: colour }] };
}

export function changeColour(doc: Doc, letter: string, colour: Partial<Colour>, label: string): Edit | null {
  const index = doc.colours.findIndex((each) => each.letter === letter);
  if (index < 0) return null;
  return { label, ops: [{ op: "replace", path: `/colours/${index}`, value: { ...doc.colours[index], ...colour } }] };
}

export function changeLoom(loom: Layout, label: string): Edit {
  return { label, ops: [{ op: "replace", path: "/loom", value: loom }] };
}

export function changeTitle(title: string, label: string): Edit {
  return { label, ops: [{ op: "replace", path: "/title", value: title }] };
}

/** A move so placed that its first peg is that one; null where it names none or would lead off the rows. */
export function moveTo(move: Move, peg: string): Move | null {
  const first = addresses([move])[0];
  const [from, to] = [first && parseAddress(first), parseAddress(peg)];
  return from && to ? moveBy(move, to.row - from.row, to.number - from.number) : null;
}
