/** What a maker does with a run of steps: repeats it, mirrors it, makes a motif of it, moves it, gives it other colours. */
import { parseAddress, printAddress } from "./address";
import type { Edit } from "./edit";
import type { Stride } from "./edits";
import { addresses, expand } from "./expand";
import type { Doc, Motif, Repeat, Step, Use } from "./pattern";

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
export function repeatRun(
  doc: Doc,
  run: Run,
  times: number,
  rows: number,
  pegs: number,
  label: string,
  colours: Record<string, string[]> = {},
): Edit {
  const inTurns = Object.keys(colours).length ? { colours } : {};
  const repeat: Step = { do: "repeat", times, steps: stepsOf(doc, run), ...strideFields(rows, pegs), ...inTurns };
  return { label, ops: replaceRun(run, [repeat]) };
}

/** Take a run out. */
export function removeRun(run: Run, label: string): Edit {
  return { label, ops: replaceRun(run, []) };
}

/** Make a motif of a run and work it where the run stood. Each of its colours becomes a slot, filled here with the
 * colour that it was; worked elsewhere it takes others. */
export function makeMotif(doc: Doc, run: Run, name: string, label: string): Edit {
  const letters = coloursOf(doc, run);
  const motif: Motif = { name, steps: stepsOf(doc, run), ...(letters.length ? { colours: letters } : {}) };
  return {
    label,
    ops: [
      { op: "add", path: `/motifs/${doc.motifs.length}`, value: motif },
      ...replaceRun(run, [{ do: "motif", name, ...fillSlots(letters) }]),
    ],
  };
}

function fillSlots(letters: readonly string[]): { colours?: Record<string, string> } {
  return letters.length ? { colours: Object.fromEntries(letters.map((letter) => [letter, letter])) } : {};
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
  const image: Use = { do: "motif", name, mirror: [...mirror], ...fillSlots(coloursOf(doc, run)), ...strideFields(rows, pegs) };
  return { label, ops: [...made.ops, { op: "add", path: `/steps/${run.from + 1}`, value: image }] };
}

/** Work a motif so that the first peg that it touches comes to stand on that peg. A single slot takes the colour at
 * hand; of several, each takes the colour that it is called by, or where there is none the one at hand. */
export function motifUseAt(doc: Doc, motif: Motif, peg: string, colour: string, mirror: readonly Mirror[] = []): Use | null {
  const letters = new Set((motif.colours ?? []).length > 1 ? doc.colours.map((each) => each.letter) : []);
  const slots = Object.fromEntries((motif.colours ?? []).map((slot) => [slot, letters.has(slot) ? slot : colour]));
  const use: Use = {
    do: "motif",
    name: motif.name,
    ...(mirror.length ? { mirror: [...mirror] } : {}),
    ...(Object.keys(slots).length ? { colours: slots } : {}),
  };
  const moves = expand({ ...doc, steps: [use] }).flat().filter((move) => move !== null);
  const first = addresses(moves)[0];
  const [from, to] = [first && parseAddress(first), parseAddress(peg)];
  return from && to ? { ...use, ...strideFields(to.row - from.row, to.number - from.number) } : null;
}

/** A name that no motif of the document has yet. */
export function freeName(doc: Doc, name: string): string {
  const taken = new Set(doc.motifs.map((motif) => motif.name));
  let free = name;
  for (let k = 2; taken.has(free); k++) free = `${name} ${k}`;
  return free;
}

function strideFields(rows: number, pegs: number): { rows?: number; pegs?: number } {
  return { ...(rows ? { rows } : {}), ...(pegs ? { pegs } : {}) };
}

/** How far a run reaches, as rows and pegs to move it on by so that the next one begins where it ends; backwards
 * where it was worked backwards. */
export function strideOfRun(doc: Doc, run: Run): Stride {
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

/** The letters of the bands that a run lays, in order. */
export function coloursOf(doc: Doc, run: Run): string[] {
  const moves = expand({ ...doc, steps: stepsOf(doc, run) }).flat();
  return [...new Set(moves.flatMap((move) => (move && "colour" in move ? [move.colour] : [])))];
}

/** The colours of a repeat that change with the round, one of them changed for another. */
function inTurn(step: Repeat, from: string, to: string): Pick<Repeat, "colours"> {
  const each = Object.entries(step.colours ?? {});
  return each.length ? { colours: Object.fromEntries(each.map(([slot, turns]) => [slot, turns.map((letter) => (letter === from ? to : letter))])) } : {};
}

/** What a maker writes of the colours that a letter stands for in turn, round by round: "A F C". Letters that the piece
 * does not have are left out; one alone is no change. */
export function readTurns(doc: Doc, letter: string, said: string): Record<string, string[]> {
  const known = new Set(doc.colours.map((each) => each.letter));
  const turns = said.split(/[\s,]+/).filter((each) => known.has(each));
  return turns.length > 1 ? { [letter]: turns } : {};
}

/** Give the bands of a run that have one colour another. A motif keeps its steps: the colour becomes a slot of it,
 * filled anew where the run works it, and as before wherever else it is worked. */
export function recolourRun(doc: Doc, run: Run, from: string, to: string, label: string): Edit {
  const ops: Edit["ops"] = [];
  const named = new Set<string>();
  const fill = (steps: readonly Step[]): Step[] =>
    steps.map((step) => {
      if (step.do === "repeat") // a letter that changes with the round is no colour within its steps
        return { ...step, ...inTurn(step, from, to), steps: step.colours?.[from] ? step.steps : fill(step.steps) };
      if (step.do !== "motif") return "colour" in step && step.colour === from ? { ...step, colour: to } : step;
      const filled = Object.fromEntries(Object.entries(step.colours ?? {}).map(([slot, given]) => [slot, given === from ? to : given]));
      const written = motifsWrittenIn(doc, step.name, from);
      if (!written.length) return Object.keys(filled).length ? { ...step, colours: filled } : step;
      written.forEach((name) => named.add(name));
      return { ...step, colours: { ...filled, [from]: to } };
    });
  const steps = fill(stepsOf(doc, run));
  if (named.size) {
    const keep = (within: readonly Step[]): Step[] =>
      within.map((step) => {
        if (step.do === "repeat") return { ...step, steps: keep(step.steps) };
        return step.do === "motif" && named.has(step.name) ? { ...step, colours: { [from]: from, ...step.colours } } : step;
      });
    doc.motifs.forEach((motif, k) => {
      const value = { ...motif, steps: keep(motif.steps), ...(named.has(motif.name) ? { colours: [...(motif.colours ?? []), from] } : {}) };
      ops.push({ op: "replace", path: `/motifs/${k}`, value });
    });
    const all = [...keep(doc.steps.slice(0, run.from)), ...steps, ...keep(doc.steps.slice(run.to + 1))];
    return { label, ops: [...ops, { op: "replace", path: "/steps", value: all }] };
  }
  return { label, ops: replaceRun(run, steps) };
}

/** The motif of that name and those that it works, as far as they lay bands of a colour by a letter that is none of
 * their slots. */
function motifsWrittenIn(doc: Doc, name: string, letter: string, calls: readonly string[] = []): string[] {
  const motif = doc.motifs.find((each) => each.name === name);
  if (!motif || motif.colours?.includes(letter) || calls.includes(name)) return [];
  const inner = new Set<string>();
  const lays = (steps: readonly Step[]): boolean =>
    steps.map((step) => {
      if (step.do === "repeat") return lays(step.steps);
      if (step.do !== "motif") return "colour" in step && step.colour === letter;
      const within = motifsWrittenIn(doc, step.name, letter, [...calls, name]);
      within.forEach((each) => inner.add(each));
      return within.length > 0 || Object.values(step.colours ?? {}).includes(letter);
    }).some(Boolean);
  return lays(motif.steps) ? [name, ...inner] : [];
}

/** Move a run so that it stands before the step which is now at that index. */
export function moveRun(doc: Doc, run: Run, before: number, label: string): Edit | null {
  if (before >= run.from && before <= run.to + 1) return null;
  const steps = stepsOf(doc, run);
  const at = before > run.to ? before - steps.length : before;
  return {
    label,
    ops: [...replaceRun(run, []), ...steps.map((step, k) => ({ op: "add" as const, path: `/steps/${at + k}`, value: step }))],
  };
}
