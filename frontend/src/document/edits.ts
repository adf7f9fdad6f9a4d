/** What a maker changes, each as one edit. None of these looks at the screen. */
import type { Edit } from "./edit";
import { addresses, expand, moved } from "./expand";
import { parseAddress, printAddress } from "./address";
import type { Colour, Doc, Layout, Motif, Move, Step, Use } from "./pattern";

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
  const moves = expand(doc)[origin.index];
  if (!moves) return null;
  const steps = moves.flatMap((move, k) => {
    const kept = move && k === origin.within ? change(move) : move;
    return kept ? [kept] : [];
  });
  return replaceStep(origin.index, steps, label);
}

/** Change a step as it stands in the document, and with it every move that comes from it. */
export function changeEverywhere(path: string, value: Step, label: string): Edit {
  return { label, ops: [{ op: "replace", path, value }] };
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
export function again(before: Move | null, last: Move): Move | null {
  if (last.do === "turn") return null; // turned again, the loom would be as it was
  const stride = strideOf(before, last);
  return moved(last, stride.rows, stride.pegs);
}

/** The last move again and again, as long as every peg that it names is there. `room` is the most that it may be. */
export function againToEnd(before: Move | null, last: Move, isPeg: (at: string) => boolean, room = 700): Move[] {
  const stride = strideOf(before, last);
  const made: Move[] = [];
  if (!stride.rows && !stride.pegs) return made;
  for (let next = last; made.length < room; made.push(next)) {
    const on = moved(next, stride.rows, stride.pegs);
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

// --- runs of steps -------------------------------------------------------------------------------------

/** A run of the document's steps, both ends included. */
export interface Run {
  from: number;
  to: number;
}

function stepsOf(doc: Doc, run: Run): Step[] {
  return doc.steps.slice(run.from, run.to + 1);
}

function replaceRun(run: Run, steps: readonly Step[]): Edit["ops"] {
  const gone = Array.from({ length: run.to - run.from + 1 }, () => ({ op: "remove" as const, path: `/steps/${run.from}` }));
  return [...gone, ...steps.map((step, k) => ({ op: "add" as const, path: `/steps/${run.from + k}`, value: step }))];
}

/** Work a run so many times in all, moving it on by rows and pegs each time. */
export function repeatRun(doc: Doc, run: Run, times: number, rows: number, pegs: number, label: string): Edit {
  const repeat: Step = { do: "repeat", times, steps: stepsOf(doc, run), ...stride(rows, pegs) };
  return { label, ops: replaceRun(run, [repeat]) };
}

/** Take a run out. */
export function removeRun(run: Run, label: string): Edit {
  return { label, ops: replaceRun(run, []) };
}

/** Make a motif of a run and work it where the run stood. Its colours stay the letters that they are. */
export function makeMotif(doc: Doc, run: Run, name: string, label: string): Edit {
  const motif: Motif = { name, steps: stepsOf(doc, run) };
  return {
    label,
    ops: [
      { op: "add", path: `/motifs/${doc.motifs.length}`, value: motif },
      ...replaceRun(run, [{ do: "motif", name }]),
    ],
  };
}

/** Left for right (`rows`), near for far (`pegs`); both are a half turn. */
export type Mirror = "rows" | "pegs";

/** Work a mirror image of a run after it, moved on; mirrored both ways it is the run turned half round. */
export function mirrorRun(
  doc: Doc,
  run: Run,
  mirror: readonly Mirror[],
  name: string,
  rows: number,
  pegs: number,
  label: string,
): Edit {
  const made = makeMotif(doc, run, name, label);
  const image: Use = { do: "motif", name, mirror: [...mirror], ...stride(rows, pegs) };
  return { label, ops: [...made.ops, { op: "add", path: `/steps/${run.from + 1}`, value: image }] };
}

/** Work a motif so that the first peg that it touches comes to stand on that peg; its slots take one colour. */
export function useAt(doc: Doc, motif: Motif, peg: string, colour: string, mirror: readonly Mirror[] = []): Use | null {
  const slots = Object.fromEntries((motif.colours ?? []).map((slot) => [slot, colour]));
  const use: Use = {
    do: "motif",
    name: motif.name,
    ...(mirror.length ? { mirror: [...mirror] } : {}),
    ...(Object.keys(slots).length ? { colours: slots } : {}),
  };
  const moves = expand({ ...doc, steps: [use] }).flat().filter((move) => move !== null);
  const first = addresses(moves)[0];
  const [from, to] = [first && parseAddress(first), parseAddress(peg)];
  return from && to ? { ...use, ...stride(to.row - from.row, to.number - from.number) } : null;
}

/** A move so placed that its first peg is that one; null where it names none or would lead off the rows. */
export function movedTo(move: Move, peg: string): Move | null {
  const first = addresses([move])[0];
  const [from, to] = [first && parseAddress(first), parseAddress(peg)];
  return from && to ? moved(move, to.row - from.row, to.number - from.number) : null;
}

/** A name that no motif of the document has yet. */
export function freeName(doc: Doc, name: string): string {
  const taken = new Set(doc.motifs.map((motif) => motif.name));
  let free = name;
  for (let k = 2; taken.has(free); k++) free = `${name} ${k}`;
  return free;
}

function stride(rows: number, pegs: number): { rows?: number; pegs?: number } {
  return { ...(rows ? { rows } : {}), ...(pegs ? { pegs } : {}) };
}

/** How far a run reaches, as rows and pegs to move it on by so that the next one begins where it ends; backwards
 * where it was worked backwards. */
export function reachOf(doc: Doc, run: Run): Stride {
  const places = pegsOf(doc, run).map((text) => parseAddress(text)!);
  const span = (numbers: number[]) =>
    numbers.length ? (Math.max(...numbers) - Math.min(...numbers)) * (numbers.at(-1)! < numbers[0]! ? -1 : 1) : 0;
  const pegs = span(places.map((place) => place.number));
  return pegs ? { rows: 0, pegs } : { rows: span(places.map((place) => place.row)), pegs: 0 };
}

/** How many times a run can be worked in all, moved on by that much each time, before it leads off the pegs. */
export function timesThatFit(doc: Doc, run: Run, by: Stride, isPeg: (at: string) => boolean, most = 700): number {
  const places = [...new Set(pegsOf(doc, run))].map((text) => parseAddress(text)!);
  if (!places.length || (!by.rows && !by.pegs)) return 1;
  let times = 1;
  const fits = (k: number) =>
    places.every(({ row, number }) => {
      const at = printAddress({ row: row + k * by.rows, number: number + k * by.pegs });
      return at !== null && isPeg(at);
    });
  while (times < most && fits(times)) times++;
  return times;
}

function pegsOf(doc: Doc, run: Run): string[] {
  return expand({ ...doc, steps: stepsOf(doc, run) })
    .flat()
    .flatMap((move) => (move ? addresses([move]) : []));
}
